import { formatDay } from '../domain/day.ts';
import type { Atlas } from './atlas.ts';
import { intervalRow } from './drawing/interval-row.ts';

/** One stretch of the log of a water, beside how that water fishes now. */
export interface LevelRow {
  readonly water: string;
  readonly span: string;
  readonly events: string;
  /** "0.62 of now, likely 0.51 to 0.76". */
  readonly words: string;
  readonly drawing: string;
}

/** How the waters' own levels changed over the log; none where the log shows no change. */
export function levelRows({ venue, ratings }: Pick<Atlas, 'venue' | 'ratings'>): LevelRow[] {
  const names = new Map(venue.waters.map(({ id, name }) => [id, name]));
  return ratings.waterLevels.map(({ water, from, until, events, logLevel, sd, low80, high80 }) => {
    const value = Math.exp(logLevel);
    const isNow = logLevel === 0 && sd === 0;
    return {
      water: names.get(water) ?? water,
      span: `${formatDay(from)} to ${formatDay(until)}`,
      events: String(events),
      words: isNow ? 'now' : `${value.toFixed(2)} of now, likely ${low80.toFixed(2)} to ${high80.toFixed(2)}`,
      drawing: intervalRow({ value, low: low80, high: high80, evidence: 'solid' }),
    };
  });
}
