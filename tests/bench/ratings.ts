import { spawnSync } from 'node:child_process';
import { availableParallelism, loadavg } from 'node:os';
import { bagTables, fitBag, rateBag } from '../../src/ratings/bag-model.ts';
import { choleskyInPlace } from '../../src/ratings/engine/cholesky.ts';
import { fitLatentModel } from '../../src/ratings/engine/fit-latent-model.ts';
import type { LatentModel } from '../../src/ratings/engine/latent-model.ts';
import { RATING_PRIORS } from '../../src/ratings/fit-ratings.ts';
import { demoVenue } from '../demo/demo-venue.ts';
import {
  pegMonthWorths,
  type SimulatedModel,
  type SimulatedSize,
  SMALL_VENUE,
  simulatedModel,
} from '../ratings/engine/simulated-model.ts';
import { rateLargeVenue } from './large-venue.ts';
import { lme4Seconds } from './lme4.ts';

/**
 * Times the fit of generated venues and prints a table and the same as JSON: `npm run bench:ratings`. A size can be named to run it
 * alone: `npm run bench:ratings -- 10k`. Each runs in a process of its own, so that its peak memory is its own.
 *
 * The yardstick: lme4 1.1-31 in its fast ordering takes 27 s (three random terms) and 35 s (with 30 feature columns) on 100,000
 * sessions of 500 pegs, 2,000 anglers and 3,000 events, one thread, where factoring 2,640 unknowns by the code here took 1.46 s.
 * The fit uses one core; processor time is what it takes on an idle machine. `scaled` is that time times 1.46 s over the
 * factoring time of this machine at this hour.
 */
const YARDSTICK_FACTOR_SECONDS = 1.46;
const UNKNOWNS = 2640;

interface Size extends Partial<SimulatedSize> {
  /** Share of rows left-censored: the lowest of every event, at the lowest that is left. */
  readonly censored?: number;
  /** With weak priors and averaged over the variances, as a guide's tables are. */
  readonly isAveraged?: boolean;
}

const LARGE = { pegs: 500, anglers: 2000, field: 34, features: 10 };

const SIZES: Readonly<Record<string, Size>> = {
  '1k': { pegs: 60, anglers: 120, events: 40, field: 26, features: 6 },
  '10k': { ...LARGE, events: 300 },
  '30k': { ...LARGE, events: 900 },
  '100k': { ...LARGE, events: 3000 },
  '100k, 10% censored': { ...LARGE, events: 3000, censored: 0.1 },
  '100k, averaged over the variances': { ...LARGE, events: 3000, isAveraged: true },
};
const DEMO = 'demo venue, total bag';
/** All tables, through the folder of kept ratings, not one fit. */
const WHOLE = 'whole venue of 600 pegs';
/** Sizes that lme4 fits too, where it is installed. */
const BESIDE_LME4 = '100k';

interface Result {
  readonly venue: string;
  readonly sessions: number;
  readonly events: number;
  readonly pegs: number;
  readonly anglers: number;
  readonly iterations: number;
  readonly factorisations: number;
  readonly stopped: string;
  /** Processor seconds of lme4 on the same rows; "skipped" where it is not installed or not asked. */
  readonly lme4: number | 'skipped';
  /** Our processor seconds, sds included, over lme4's. */
  readonly 'of lme4': number | 'skipped';
  readonly seconds: number;
  readonly 'processor seconds': number;
  readonly 'worth, seconds': number;
  readonly 'peak memory, MB': number;
}

interface Timed<Value> {
  readonly value: Value;
  readonly seconds: number;
  readonly processor: number;
}

const rounded = (value: number) => Math.round(value * 100) / 100;

function timed<Value>(work: () => Value): Timed<Value> {
  const start = performance.now();
  const before = process.cpuUsage();
  const value = work();
  const { user, system } = process.cpuUsage(before);
  return { value, seconds: (performance.now() - start) / 1000, processor: (user + system) / 1e6 };
}

/** Hides the lowest bags of every event: each known only to lie below the lowest that is left. */
function censor(model: LatentModel, event: Int32Array, share: number): LatentModel {
  const { upper: value } = model.observations;
  const lower = value.slice();
  const upper = value.slice();
  const byEvent = Map.groupBy(
    Array.from(value, (_, row) => row),
    (row) => event[row]!,
  );
  for (const rows of byEvent.values()) {
    const sorted = rows.toSorted((a, b) => value[a]! - value[b]!);
    const hidden = Math.round(share * sorted.length);
    for (const row of sorted.slice(0, hidden)) {
      lower[row] = Number.NEGATIVE_INFINITY;
      upper[row] = value[sorted[hidden]!]!;
    }
  }
  return { ...model, observations: { lower, upper } };
}

function runSize(name: string): Result {
  const { censored = 0, isAveraged = false, ...of } = SIZES[name]!;
  const size: SimulatedSize = { ...SMALL_VENUE, seed: 2026, ...of };
  const simulated = simulatedModel(size);
  const model = censored === 0 ? simulated.model : censor(simulated.model, simulated.event, censored);
  const fit = timed(() =>
    fitLatentModel(model, {
      ...(isAveraged ? { variances: 'integrated', weakPriors: RATING_PRIORS } : {}),
      progress: ({ iteration, distance }) => {
        process.stderr.write(`${name}: step ${iteration}, ${distance.toPrecision(2)} from the best variances\n`);
      },
    }),
  );
  const worths = timed(() => fit.value.posterior(pegMonthWorths(simulated).map(({ combination }) => combination)));
  const lme4 = name === BESIDE_LME4 ? besideLme4(simulated) : 'skipped';
  return {
    venue: name,
    sessions: simulated.value.length,
    events: size.events,
    pegs: size.pegs,
    anglers: size.anglers,
    iterations: fit.value.iterations,
    factorisations: fit.value.factorisations,
    stopped: fit.value.stopped,
    lme4,
    'of lme4': lme4 === 'skipped' ? lme4 : rounded((fit.processor + worths.processor) / lme4),
    seconds: rounded(fit.seconds),
    'processor seconds': rounded(fit.processor),
    'worth, seconds': rounded(worths.processor),
    'peak memory, MB': Math.round(process.resourceUsage().maxRSS / 1024),
  };
}

function besideLme4({ model, value }: SimulatedModel): Result['lme4'] {
  const levelsOf = (term: string) => model.terms.find(({ name }) => name === term)!.rows.column;
  const seconds = lme4Seconds({ value, event: levelsOf('event'), angler: levelsOf('angler'), peg: levelsOf('peg') });
  return seconds === null ? 'skipped' : rounded(seconds);
}

/** The demo venue as its guide rates it: variances integrated over. */
function runDemo(): Result {
  const { venue } = demoVenue();
  const fitted = timed(() => fitBag(venue, 'total'));
  const tables = timed(() => bagTables(rateBag(venue, fitted.value)));
  const { fit, sessions } = fitted.value;
  return {
    venue: DEMO,
    sessions: sessions.length,
    events: venue.events.length,
    pegs: venue.pegs.length,
    anglers: new Set(sessions.map(({ session }) => session.angler)).size,
    iterations: fit.iterations,
    factorisations: fit.factorisations,
    stopped: fit.stopped,
    lme4: 'skipped',
    'of lme4': 'skipped',
    seconds: rounded(fitted.seconds),
    'processor seconds': rounded(fitted.processor),
    'worth, seconds': rounded(tables.processor),
    'peak memory, MB': Math.round(process.resourceUsage().maxRSS / 1024),
  };
}

function factorSeconds(): number {
  const matrix = new Float64Array(UNKNOWNS * UNKNOWNS);
  for (let i = 0; i < UNKNOWNS; i++) {
    for (let j = 0; j <= i; j++) matrix[i * UNKNOWNS + j] = Math.exp(-Math.abs(i - j) / 50) + (i === j ? 1 : 0);
  }
  return timed(() => choleskyInPlace(matrix, UNKNOWNS)).processor;
}

const [asked, isChild] = process.argv.slice(2);
if (asked === WHOLE) {
  console.table(await rateLargeVenue());
} else if (isChild === '--alone') {
  process.stdout.write(JSON.stringify(asked === DEMO ? runDemo() : runSize(asked!)));
} else {
  const names = asked === undefined ? [DEMO, ...Object.keys(SIZES)] : [asked];
  const unknown = names.filter((name) => name !== DEMO && SIZES[name] === undefined);
  if (unknown.length > 0) {
    console.error(
      `Unexpected size "${unknown[0]}", expected one of: ${[DEMO, WHOLE, ...Object.keys(SIZES)].join('; ')}`,
    );
    process.exitCode = 1;
  } else {
    const factor = factorSeconds();
    const rows = names.map((name) => {
      const { stdout, status } = spawnSync(process.execPath, [import.meta.filename, name, '--alone'], {
        encoding: 'utf8',
        stdio: ['ignore', 'pipe', 'inherit'],
      });
      if (status !== 0) throw new Error(`the run of ${name} ended with ${status}`);
      const row = JSON.parse(stdout) as Result;
      return { ...row, scaled: rounded((row['processor seconds'] * YARDSTICK_FACTOR_SECONDS) / factor) };
    });
    console.log(`Node ${process.version}, ${availableParallelism()} cores, load ${loadavg()[0]!.toFixed(1)}`);
    console.log(
      `Factoring ${UNKNOWNS} unknowns: ${factor.toFixed(2)} s of processor (yardstick ${YARDSTICK_FACTOR_SECONDS} s)`,
    );
    console.table(rows);
    console.log(JSON.stringify({ factorSeconds: rounded(factor), rows }));
    if (asked === undefined) console.table(await rateLargeVenue());
  }
}
