/** What an angler noted as caught in one hour of a session. An hour without a row, in a session that has rows, brought nothing. */
export interface HourWeight {
  readonly event: string;
  /** The number on the post that day, as on the sheet. */
  readonly peg: string;
  /** Of the slip it came from, where a peg was chosen: a peg may be used twice in a day. */
  readonly slip?: string;
  /** Of the match, the first after the all in being 1. */
  readonly hour: number;
  /** A part of the bag, or `total`. */
  readonly part: string;
  readonly weightGrams: number;
}

/** The whole bag, where nobody told the parts apart. */
export const WHOLE_BAG = 'total';

/** Hours and the scales that differ by more than this are told: a bag in the net is guessed within that (our own choice). */
const FAR_APART = 2;

/** Whether two weights of one bag are so far apart that one of them may be of another peg. */
export function areFarApart(oneGrams: number, otherGrams: number): boolean {
  return oneGrams > otherGrams * FAR_APART || otherGrams > oneGrams * FAR_APART;
}

/** By what a session's hours are found: in a match its event and peg, of a chosen peg the slip too. */
export function hoursKey({ event, peg, slip = '' }: Pick<HourWeight, 'event' | 'peg' | 'slip'>): string {
  return `${event}\n${peg}\n${slip}`;
}

/** How many hours of a match are begun: the last may be half an hour. */
export function hoursBegun(hours: number): number {
  return Math.ceil(hours);
}

/** The weights of one session hour by hour, in grams: of each hour the whole bag where it is given, else its parts together. */
export function gramsByHour(rows: readonly HourWeight[], hours: number): readonly number[] {
  return Array.from({ length: hoursBegun(hours) }, (_, index) => {
    const ofHour = rows.filter(({ hour }) => hour === index + 1);
    const whole = ofHour.filter(({ part }) => part === WHOLE_BAG);
    return (whole.length > 0 ? whole : ofHour).reduce((sum, { weightGrams }) => sum + weightGrams, 0);
  });
}
