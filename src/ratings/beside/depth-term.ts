import { monthOf } from '../../domain/day.ts';
import type { GroundDepths } from '../rated-venue.ts';
import type { ModelSession } from '../sessions-in-model.ts';
import type { BesideMaker } from './beside-term.ts';
import { meanSteps, nearestKnot, stepsAt } from './broken-stick.ts';
import { groundOfSession } from './session-ground.ts';

/** Depths below datum, in metres, at which the curve may bend. */
const DEPTH_KNOTS_METRES = [0.5, 1, 1.5, 2, 3, 4] as const;
const STEPS = DEPTH_KNOTS_METRES.length - 1;
/** The pole lines whose depth is asked for. */
const LINES = [
  { words: 'at 6 m', depthOf: (depths: GroundDepths) => depths.at6Metres },
  { words: 'at 13 m', depthOf: (depths: GroundDepths) => depths.at13Metres },
] as const;
const SEASONS = [
  { words: 'winter', month: 1 },
  { words: 'spring', month: 4 },
  { words: 'summer', month: 7 },
  { words: 'autumn', month: 10 },
] as const;

/**
 * The depth at a pole of 6 m and of 13 m as two curves, each with a wave over the year (its cosine and sine): what "deep water" as a
 * feature tells with one yes or no. A line that is not plumbed counts as the average one.
 */
export const depthTerm: BesideMaker = (venue, sessions) => {
  const groundOf = groundOfSession(venue);
  const depthsOf = (session: ModelSession) => groundOf(session)?.depths ?? null;
  const known = LINES.map(({ depthOf }) =>
    sessions.flatMap((session) => {
      const depths = depthsOf(session);
      return depths === null ? [] : (depthOf(depths) ?? []);
    }),
  );
  if (known.every((depths) => new Set(depths).size < 2)) return { of: 'depth', why: 'not-plumbed' };
  const middles = known.map((depths) => meanSteps(DEPTH_KNOTS_METRES, depths));
  const weightsAt = (line: number, depth: number | null, month: number) => {
    const steps =
      depth === null ? null : stepsAt(DEPTH_KNOTS_METRES, depth).map((step, k) => step - middles[line]![k]!);
    return [1, Math.cos((month * Math.PI) / 6), Math.sin((month * Math.PI) / 6)].flatMap((part) =>
      steps === null ? new Array<number>(STEPS).fill(0) : steps.map((step) => step * part),
    );
  };
  const nothing = new Array<number>(3 * STEPS).fill(0);
  return {
    of: 'depth',
    term: {
      of: 'depth',
      columns: LINES.length * 3 * STEPS,
      weightsOf: (session) => {
        const depths = depthsOf(session);
        if (depths === null || LINES.every(({ depthOf }) => depthOf(depths) === null)) return null;
        return LINES.flatMap(({ depthOf }, line) => weightsAt(line, depthOf(depths), monthOf(session.event.day)));
      },
      curves: LINES.flatMap(({ words, depthOf }, line) =>
        SEASONS.map(({ words: season, month }) => ({
          group: `${words}, ${season}`,
          points: DEPTH_KNOTS_METRES.map((at) => ({
            at,
            weights: LINES.flatMap((_, other) => (other === line ? weightsAt(line, at, month) : nothing)),
          })),
          pointOf: (session: ModelSession) => {
            const depths = depthsOf(session);
            const depth = depths === null ? null : depthOf(depths);
            if (depth === null || seasonOf(monthOf(session.event.day)) !== season) return null;
            return nearestKnot(DEPTH_KNOTS_METRES, depth);
          },
        })),
      ),
    },
  };
};

/** The season whose middle month is nearest: December to February is winter. */
function seasonOf(month: number): (typeof SEASONS)[number]['words'] {
  return SEASONS[Math.floor((month % 12) / 3)]!.words;
}
