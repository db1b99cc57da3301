import type { FetchWorth } from '../domain/wind-worth.ts';
import type { Ratings } from '../ratings/ratings.ts';
import type { Say } from '../words/say.ts';

/** How much a wind is worth by its open water, curve by curve under its name, for the reader's phone; null where none is told. */
export type WindWorths = Readonly<Record<string, readonly FetchWorth[]>>;

/** The curves of the wind where it earned its place. */
export function windWorths({ besides }: Pick<Ratings, 'besides'>): WindWorths | null {
  const points = besides.filter(({ of }) => of === 'wind');
  if (points.length === 0) return null;
  return Object.fromEntries(
    [...Map.groupBy(points, ({ group }) => group)].map(([group, curve]) => [
      group,
      curve.map(({ at, worth, low80, high80 }) => ({
        fetchMetres: at,
        worth: places(worth),
        low80: places(low80),
        high80: places(high80),
      })),
    ]),
  );
}

/** By what to multiply the expected bags for the room beside the peg; null where room did not earn its place. */
export function roomWords({ besides }: Pick<Ratings, 'besides'>, say: Say): string | null {
  const points = besides.filter(({ of }) => of === 'room').sort((a, b) => a.at - b.at);
  if (points.length === 0) return null;
  const list = points.map(({ at, worth, low80, high80 }) =>
    say('bag.roomPoint', {
      pegs: at,
      worth: worth.toFixed(2),
      low: low80.toFixed(2),
      high: high80.toFixed(2),
    }),
  );
  return say('bag.room', { list: list.join('; ') });
}

/** Two places, as they are shown: every sheet carries the curves. */
function places(value: number): number {
  return Math.round(value * 100) / 100;
}
