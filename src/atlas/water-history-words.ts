import type { Units } from '../domain/bag.ts';
import { formatDay } from '../domain/day.ts';
import { formatLength } from '../domain/length.ts';
import type { Peg } from '../domain/peg.ts';
import type { FishMoved, WaterHistory } from '../domain/water-history.ts';
import { formatWeight } from '../domain/weight.ts';
import type { Fact } from './peg-bank.ts';

/** What happened to a water, as facts for its page: fish put in and taken out, level zero set elsewhere, pegs numbered anew. */
export function waterHistoryFacts(history: WaterHistory, pegs: readonly Peg[], units: Units): readonly Fact[] {
  const fish = (name: string, moved: readonly FishMoved[] = []): readonly Fact[] =>
    moved.map(({ on, what, kilograms }) => ({
      name,
      words: `${formatDay(on)}: ${what}${kilograms === undefined ? '' : `, ${formatWeight(kilograms * 1000, units)}`}`,
    }));
  return [
    ...fish('Stocked', history.stocked),
    ...fish('Netted', history.netted),
    ...(history.levelChanges ?? []).map(({ on, metres, why }) => ({
      name: 'Level zero',
      words: `${formatDay(on)}: ${formatLength(Math.abs(metres), units)} ${metres < 0 ? 'lower' : 'higher'} than before${why === undefined ? '' : `, ${why}`}`,
    })),
    ...renumbered(pegs),
  ];
}

/** One fact a day on which numbers changed. */
function renumbered(pegs: readonly Peg[]): readonly Fact[] {
  const changes = pegs.flatMap(({ peg, was = [] }) =>
    was.map(({ peg: before, until }, i) => ({ before, now: was[i + 1]?.peg ?? peg, until })),
  );
  return [...Map.groupBy(changes, ({ until }) => until)]
    .sort(([a], [b]) => (a < b ? 1 : -1))
    .map(([until, list]) => ({
      name: 'Numbered anew',
      words: `after ${formatDay(until)}: ${list.map(({ before, now }) => `${before} became ${now}`).join(', ')}`,
    }));
}
