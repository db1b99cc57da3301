import { spawnSync } from 'node:child_process';
import { globSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { textTable } from '../../src/commands/text-table.ts';
import { lineSample } from './line-sample.ts';
import { type MutantOutcome, roomScore } from './room-score.ts';

/** `npm run mutation:score [-- LINES SEED ROOM…]`: changes drawn lines of each room, and prints how many changes its tests notice. */
const [lines = '90', seed = '1', ...named] = process.argv.slice(2);
const rooms = named.length > 0 ? named : ['domain', 'ground', 'content', 'ratings'];
const plain = JSON.parse(readFileSync('.stryker.json', 'utf8')) as Record<string, unknown>;

interface Report {
  readonly files: Readonly<
    Record<string, { readonly mutants: readonly { status: string; location: { start: { line: number } } }[] }>
  >;
}

function outcomesOf(room: string): MutantOutcome[] {
  const files = globSync(`src/${room}/**/*.ts`).map((path) => ({ path, text: readFileSync(path, 'utf8') }));
  const jsonFile = `.cache/mutation-score-${room}.json`;
  const settings = `.cache/mutation-score-${room}.settings.json`;
  mkdirSync('.cache', { recursive: true });
  const ofRoom = {
    ...plain,
    mutate: lineSample(files, Number(lines), Number(seed)),
    // A result of an earlier run may be of other lines.
    incremental: false,
    reporters: ['clear-text', 'progress-append-only', 'json'],
    jsonReporter: { fileName: jsonFile },
    tempDirName: `.cache/mutation-${room}`,
    // A shared machine makes a test slow, which is no endless loop.
    dryRunTimeoutMinutes: 60,
    timeoutMS: 60_000,
  };
  writeFileSync(settings, JSON.stringify(ofRoom));
  const { status } = spawnSync('stryker', ['run', settings], {
    stdio: 'inherit',
    env: { ...process.env, MUTATED_ROOM: room },
  });
  if (status !== 0) throw new Error(`The mutation run of ${room} ended with ${status}.`);
  const report = JSON.parse(readFileSync(jsonFile, 'utf8')) as Report;
  return Object.entries(report.files).flatMap(([path, { mutants }]) =>
    mutants.map((mutant) => ({ path, line: mutant.location.start.line, status: mutant.status })),
  );
}

const percent = (share: number) => `${Math.round(100 * share)}%`;
const rows = rooms.map((room) => {
  const { lines: drawn, mutants, noticed, share, low, high } = roomScore(outcomesOf(room));
  return [room, `${drawn}`, `${mutants}`, `${noticed}`, percent(share), `${percent(low)} to ${percent(high)}`];
});
process.stdout.write(
  `${textTable([['room', 'lines', 'mutants', 'noticed', 'score', '95% interval'], ...rows]).join('\n')}\n`,
);
