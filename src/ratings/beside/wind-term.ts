import { monthOf } from '../../domain/day.ts';
import { FRESH_FROM_METRES_PER_SECOND, isWarmMonth, windGroup } from '../../domain/wind-worth.ts';
import type { RatedVenue } from '../rated-venue.ts';
import type { ModelSession } from '../sessions-in-model.ts';
import type { BesideMaker } from './beside-term.ts';
import { nearestKnot, stepsAt } from './broken-stick.ts';
import { groundOfSession } from './session-ground.ts';

/** Metres of open water along the wind at which the curve may bend, each twice to four times the one before. */
const FETCH_KNOTS_METRES = [5, 20, 50, 100, 200] as const;
const KNOTS = FETCH_KNOTS_METRES.map(Math.log);
const STEPS = KNOTS.length - 1;

/** Less than this is calm on Beaufort's scale, force 0, and has no fetch. */
const CALM_BELOW_METRES_PER_SECOND = 0.3;

/** Weights of a fetch in a wind: the curve of any wind, what a fresh wind adds to it, and what the warm half of the year adds. */
export function fetchWeights(fetchMetres: number, isFresh: boolean, isWarm: boolean): number[] {
  const steps = stepsAt(KNOTS, Math.log(Math.max(1, fetchMetres)));
  const none = new Array<number>(STEPS).fill(0);
  return [...steps, ...(isFresh ? steps : none), ...(isWarm ? steps : none)];
}

/** Fetch along any wind from those of sixteen directions, between two of them by the angle. */
export function fetchAlong(fetchMetres: readonly number[], fromDegrees: number): number {
  const place = ((((fromDegrees % 360) + 360) % 360) / 360) * fetchMetres.length;
  const before = Math.floor(place) % fetchMetres.length;
  const share = place - Math.floor(place);
  return fetchMetres[before]! * (1 - share) + fetchMetres[(before + 1) % fetchMetres.length]! * share;
}

/**
 * Open water along the day's wind at the peg, by the wind's strength and the half of the year. A wind without a strength counts as a
 * light one: most are.
 */
export const windTerm: BesideMaker = (venue, sessions) => {
  const winds = sessions.filter((session) => windOf(session) !== null);
  if (winds.length === 0) return { of: 'wind', why: 'no-wind-logged' };
  const fetchOf = fetchOfSession(venue);
  if (!winds.some((session) => fetchOf(session) !== null)) return { of: 'wind', why: 'no-open-water' };
  const told = (session: ModelSession) => {
    const wind = windOf(session);
    const fetch = fetchOf(session);
    return wind === null || fetch === null ? null : { ...wind, fetch, isWarm: isWarmMonth(monthOf(session.event.day)) };
  };
  const groups = [false, true].flatMap((isWarm) => [false, true].map((isFresh) => ({ isWarm, isFresh })));
  return {
    of: 'wind',
    term: {
      of: 'wind',
      columns: 3 * STEPS,
      weightsOf: (session) => {
        const known = told(session);
        return known === null ? null : fetchWeights(known.fetch, known.isFresh, known.isWarm);
      },
      curves: groups.map(({ isWarm, isFresh }) => ({
        group: windGroup(isFresh, isWarm),
        points: FETCH_KNOTS_METRES.map((at) => ({ at, weights: fetchWeights(at, isFresh, isWarm) })),
        pointOf: (session) => {
          const known = told(session);
          if (known === null || known.isWarm !== isWarm || known.isFresh !== isFresh) return null;
          return nearestKnot(KNOTS, Math.log(Math.max(1, known.fetch)));
        },
      })),
    },
  };
};

function windOf({ event }: ModelSession): { readonly fromDegrees: number; readonly isFresh: boolean } | null {
  const { windFromDegrees, windMetresPerSecond } = event.conditions;
  if (windFromDegrees === undefined) return null;
  if (windMetresPerSecond !== undefined && windMetresPerSecond < CALM_BELOW_METRES_PER_SECOND) return null;
  return { fromDegrees: windFromDegrees, isFresh: (windMetresPerSecond ?? 0) >= FRESH_FROM_METRES_PER_SECOND };
}

/** Open water along the wind of a session's day. */
function fetchOfSession(venue: RatedVenue): (session: ModelSession) => number | null {
  const groundOf = groundOfSession(venue);
  return (session) => {
    const { windFromDegrees } = session.event.conditions;
    const fetchMetres = groundOf(session)?.fetchMetres;
    return windFromDegrees === undefined || fetchMetres === undefined ? null : fetchAlong(fetchMetres, windFromDegrees);
  };
}
