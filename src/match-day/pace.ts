/** What an angler caught of one bag part, as they noted it on the bank. */
export interface Caught {
  /** Minutes since the all in. */
  readonly minute: number;
  readonly part: string;
  readonly grams: number;
}

/** How a bag stands against a target while the match goes on. */
export interface Pace {
  readonly caughtGrams: number;
  readonly minutesLeft: number;
  readonly state: 'before' | 'fishing' | 'over';
  /** Still to catch; 0 once the target is reached. */
  readonly stillGrams: number;
  /** To catch in each hour from here; null where no time is left or nothing is lacking. */
  readonly neededAnHour: number | null;
  /** The whole bag if it goes on like this; null in the first quarter of an hour or so, when a single fish would forecast a record. */
  readonly endGrams: number | null;
}

/** Before so many minutes nothing is said of how the bag will end. */
const TOO_EARLY_MINUTES = 15;
/** Nor before so large a share of a bag has come, where fish come late (our own choice: that of a quarter of an hour in five). */
const TOO_SMALL_SHARE = 0.05;

/** When the fish came in matches of one length. */
export interface KnownHours {
  /** Of each hour begun, adding up to 1. */
  readonly shares: readonly number[];
  /** How long those matches were: the last hour of four and a half is a half one. */
  readonly matchHours: number;
}

/**
 * The share of a bag that is caught by a minute of the match. Even over the hours where nobody noted when the fish came, else by
 * the shares of the hours, even within each. In a match of another length each hour's share is spread over as large a part of it.
 */
export function shareBy(minute: number, matchMinutes: number, known?: KnownHours): number {
  const within = Math.min(Math.max(minute, 0), matchMinutes) / matchMinutes;
  if (known === undefined) return within;
  const { shares, matchHours } = known;
  const hour = within * matchHours;
  const whole = Math.min(Math.floor(hour), shares.length - 1);
  const before = shares.slice(0, whole).reduce((sum, share) => sum + share, 0);
  const lasts = Math.min(1, matchHours - whole);
  return Math.min(1, before + ((hour - whole) / lasts) * shares[whole]!);
}

/** How the bag stands, what is needed an hour from here and where it would end. */
export function paceOf(
  caught: readonly Caught[],
  minute: number,
  matchMinutes: number,
  targetGrams: number | null,
  known?: KnownHours,
): Pace {
  const caughtGrams = caught.reduce((sum, { grams }) => sum + grams, 0);
  const minutesLeft = Math.max(0, matchMinutes - Math.max(0, minute));
  const stillGrams = Math.max(0, (targetGrams ?? 0) - caughtGrams);
  const share = shareBy(minute, matchMinutes, known);
  const isLate = minute >= TOO_EARLY_MINUTES && (known === undefined || share >= TOO_SMALL_SHARE);
  return {
    caughtGrams,
    minutesLeft,
    state: minute < 0 ? 'before' : minute >= matchMinutes ? 'over' : 'fishing',
    stillGrams,
    neededAnHour:
      stillGrams === 0 || minutesLeft === 0 ? null : (stillGrams * 60) / Math.min(minutesLeft, matchMinutes),
    endGrams: isLate ? caughtGrams / share : null,
  };
}

/**
 * How many bags in a hundred a bag is heavier than, by their percentiles in equal steps from the least to the heaviest. Between
 * two percentiles by proportion; where several are equal, as the noughts are, by the lowest of them.
 */
export function heavierThan(grams: number, percentiles: readonly number[]): number {
  const steps = percentiles.length - 1;
  const above = percentiles.findIndex((percentile) => percentile >= grams);
  if (above === -1) return 100;
  if (above === 0) return 0;
  const [low, high] = [percentiles[above - 1]!, percentiles[above]!];
  return ((above - 1 + (grams - low) / (high - low)) * 100) / steps;
}

/**
 * The moment that a time on the clock means: the nearest of yesterday's, today's and tomorrow's, so that a match that began at
 * 22:00 is told at half past midnight. Null where the text is no time.
 */
export function nearestMoment(time: string, now: Date): Date | null {
  const [, hours, minutes] = /^([01]?\d|2[0-3])[:.]([0-5]\d)$/.exec(time.trim()) ?? [];
  if (hours === undefined || minutes === undefined) return null;
  const moments = [-1, 0, 1].map(
    (days) => new Date(now.getFullYear(), now.getMonth(), now.getDate() + days, Number(hours), Number(minutes)),
  );
  const away = (moment: Date) => Math.abs(moment.getTime() - now.getTime());
  return moments.reduce((nearest, moment) => (away(moment) < away(nearest) ? moment : nearest));
}
