import type { Day } from '../domain/day.ts';
import { type PegKey, pegKey } from '../domain/peg.ts';
import type { FitOptions, LatentFit } from './engine/latent-model.ts';
import { eventRatios } from './event-ratios.ts';
import { fitRatings, goOnFrom } from './fit-ratings.ts';
import type { FitEnd, FitStart } from './fit-report.ts';
import type { Forecast } from './forecast-score.ts';
import type { WorkKeeper } from './kept-work.ts';
import type { RatedVenue } from './rated-venue.ts';
import { type AskedTerms, anglerColumns, type RatingModel, ratingModel, TERM } from './rating-model.ts';
import type { ModelSession } from './sessions-in-model.ts';
import { standsInLog } from './stands-in-log.ts';
import type { Season } from './temperature-season.ts';
import { worthCombinations } from './worth-combinations.ts';

/** Forecasts the pegs of sessions to come from sessions gone by. */
export type Forecaster = (past: readonly ModelSession[], future: readonly ModelSession[]) => Forecast[];

/** Every peg at par. */
export const flatGuess: Forecaster = (_, future) => future.map(() => ({ logWorth: 0, sd: null }));

/** Every peg at its plain average within past events; at par where it was never weighed from. */
export const rawPegAverage: Forecaster = (past, future) => {
  const keyOf = ({ session }: ModelSession) => pegKey(session.water, session.peg);
  const averages = new Map<PegKey, number>(
    [...Map.groupBy(eventRatios(past), ({ from }) => keyOf(from))].map(([key, ratios]) => [
      key,
      ratios.reduce((sum, { logRatio }) => sum + logRatio, 0) / ratios.length,
    ]),
  );
  return future.map((session) => ({ logWorth: averages.get(keyOf(session)) ?? 0, sd: null }));
};

/** Of the variances' own doubt: nearer moves no score by a thousandth. */
const NEAR = 0.01;

/** What spares a forecaster the pasts that an earlier run has seen. */
export interface ForecasterMemory {
  readonly keeper: WorkKeeper;
  /** What forecasts rest on besides the sessions, as text. */
  readonly guide: string;
  /** Of the first so many sessions of the log. */
  readonly digestOfPast: (count: number) => string;
}

interface ForecasterOptions {
  /** Further terms that the past asked for. */
  readonly asked?: AskedTerms;
  /** Where the search for the deviations begins: where it ends is not of it. */
  readonly start?: FitStart | null;
  /** The deviations are estimated from the past up to this day; else from the whole past of the first call. */
  readonly learnUntil?: Day;
  readonly memory?: ForecasterMemory;
  /** Told how the fit of the deviations ended, and what gives the fit of the first call with what it was fitted to. */
  readonly told?: (past: () => FittedPast, end: FitEnd) => void;
  /** Forecasts beside the worth what the angler would add. */
  readonly isBeside?: boolean;
}

/** How the fit of the deviations ended, and where those that follow begin. */
interface KeptEnd extends FitEnd {
  readonly start: FitStart;
}

/** The model of the past, fitted. */
export interface FittedPast {
  readonly model: RatingModel;
  readonly fit: LatentFit;
  readonly sessions: readonly ModelSession[];
  readonly season: Season;
}

/**
 * The model's worth, with the spread of bags about them: luck, angler and the doubt about the worth. Its standard
 * deviations are estimated from the past of the first call, or the beginning of it, and kept for the later ones, whose past is a little
 * longer: each begins where that fit had its effects, so that none depends on which of the others was made.
 * @param seasonOf The season that the past allows; sessions it cannot place are left out of the past.
 */
export function modelForecaster(
  venue: RatedVenue,
  seasonOf: (past: readonly ModelSession[]) => Season,
  { asked = {}, start = null, learnUntil, memory, told, isBeside = false }: ForecasterOptions = {},
): Forecaster {
  let hold: FitOptions['hold'];
  let from = start;
  const remembered = <Result>(inputs: readonly string[], work: () => Result): Result =>
    memory === undefined ? work() : memory.keeper.of([memory.guide, JSON.stringify(asked), ...inputs], work);

  const fittedTo = (past: readonly ModelSession[]): FittedPast => {
    const season = seasonOf(past);
    const sessions = past.filter(({ event }) => season.positionOf(event) !== null);
    const model = ratingModel(venue, sessions, season, asked);
    const fit = fitRatings(model.latent, {
      variances: 'mode',
      tolerance: NEAR,
      ...(hold === undefined ? {} : { hold }),
      ...(from === null ? {} : { start: from }),
    });
    return { model, fit, sessions, season };
  };

  return (past, future) => {
    let fitted: FittedPast | null = null;
    const here = () => {
      fitted ??= fittedTo(past);
      return fitted;
    };
    if (hold === undefined) {
      const lesson = learnUntil === undefined ? past : past.filter(({ event }) => event.day <= learnUntil);
      const end = remembered(['deviations', memory?.digestOfPast(lesson.length) ?? ''], (): KeptEnd => {
        const { fit } = fittedTo(lesson);
        const { stopped, iterations, sd, residualSd } = fit;
        return { stopped, iterations, sd, residualSd, start: goOnFrom(fit) };
      });
      hold = { sd: end.sd, residualSd: end.residualSd };
      from = end.start;
      told?.(here, end);
    }
    const pastDigest = memory?.digestOfPast(past.length) ?? '';
    return remembered(['forecasts', pastDigest, JSON.stringify([hold, isBeside, future])], () =>
      forecastsFrom(venue, here(), future, isBeside),
    );
  };
}

function forecastsFrom(
  venue: RatedVenue,
  { model, fit, sessions, season }: FittedPast,
  future: readonly ModelSession[],
  isBeside: boolean,
): Forecast[] {
  const { ofPegOn } = worthCombinations(venue, model);
  const stands = standsInLog(venue);
  const { mean, sd } = fit.posterior(
    future.map(({ session, event }) =>
      ofPegOn(stands.get(pegKey(session.water, session.peg))!, event.day, season.positionOf(event)),
    ),
  );
  const spread = Math.hypot(fit.residualSd, fit.sd[TERM.angler] ?? 0, fit.sd[TERM.pegYear] ?? 0);
  const anglers = isBeside ? anglersOf(sessions, future, fit) : null;
  return future.map((_, i) => ({
    logWorth: mean[i]!,
    sd: Math.hypot(spread, sd[i]!),
    ...(anglers === null ? {} : { angler: anglers[i]! }),
  }));
}

/** What the past says of each angler; null where it knew nothing of one. */
function anglersOf(past: readonly ModelSession[], future: readonly ModelSession[], fit: LatentFit): (number | null)[] {
  const columns = anglerColumns(past);
  const anglers = columns.size === 0 ? null : fit.effects(TERM.angler);
  return future.map(({ session }) => {
    const column = columns.get(session.angler ?? '');
    return column === undefined || anglers === null ? null : anglers[column]!;
  });
}
