import type { Day } from './day.ts';

/**
 * `match`: pegs drawn by lot. `pleasure` and `practice`: pegs chosen, shown but left out of the ratings unless the
 * venue says otherwise.
 */
export type EventKind = 'match' | 'pleasure' | 'practice';

/** `full`: every weight is published. `frame`: only the top places are. */
export type Listing = 'full' | 'frame';

/** How clear the water was, in the trade's words, from clear on. */
export const WATER_COLOURS = ['clear', 'tinged', 'coloured'] as const;
export type WaterColour = (typeof WATER_COLOURS)[number];

export interface Conditions {
  readonly airDegreesC?: number;
  readonly waterDegreesC?: number;
  /** Degrees clockwise from true north that the wind comes from. */
  readonly windFromDegrees?: number;
  /** Mean speed in metres per second. */
  readonly windMetresPerSecond?: number;
  readonly sky?: string;
  readonly waterColour?: WaterColour;
}

/**
 * What a nought in the column of weights stands for at a club: `nothing`, the angler weighed in and had less than the
 * scale's division; or `dnw`, the angler did not weigh.
 */
export type BlankMeaning = 'nothing' | 'dnw';

/** One day's fishing on one water. */
export interface FishingEvent {
  readonly id: string;
  /** Groups the events of one match over several waters, which have one frame and one field. */
  readonly match?: string;
  readonly day: Day;
  readonly water: string;
  readonly kind: EventKind;
  readonly hours: number;
  readonly listing: Listing;
  /** How many places framed. */
  readonly framePlaces: number;
  /** How many fished; from the sessions where left out. */
  readonly fished?: number;
  /** What its blanks stand for; as the venue says where left out. */
  readonly blankMeans?: BlankMeaning;
  readonly conditions: Conditions;
}

/**
 * `weighed`: has a weight. `blank`: weighed in with nothing. `dnw`: fished, did not weigh. `unlisted`: fished, peg known,
 * not among the places a frame-only event published. `absent` and `disqualified` carry no weight.
 */
export type SessionStatus = 'weighed' | 'blank' | 'dnw' | 'unlisted' | 'absent' | 'disqualified';

export interface SessionPart {
  readonly weightGrams?: number;
  readonly count?: number;
}

/** One angler's stay on one peg. */
export interface Session {
  readonly event: string;
  readonly section?: string;
  readonly water: string;
  /** The name of its stand today (`Peg.peg`), found from the number of the day. */
  readonly peg: string;
  /** The number the sheet gave, where that is another one today. */
  readonly painted?: string;
  /** Opaque reference, never a name; empty means unknown. */
  readonly angler?: string;
  readonly status: SessionStatus;
  /** Of a `weighed` session; above zero. */
  readonly weightGrams?: number;
  /** By bag part id. */
  readonly parts: Readonly<Record<string, SessionPart>>;
  readonly spot?: string;
  readonly method?: string;
  readonly bait?: string;
  readonly linesFed?: number;
  /** Id of the slip it came from, of a chosen peg; never of a person. */
  readonly slip?: string;
}

/** What the blanks of an event stand for: as the event says, else the venue, else that the angler did not weigh. */
export function blankMeaning(
  event: Pick<FishingEvent, 'blankMeans'>,
  rules: { readonly blankMeans?: BlankMeaning },
): BlankMeaning {
  return event.blankMeans ?? rules.blankMeans ?? 'dnw';
}

/** The name shared by the events of one match: of an event alone, its own. */
export function matchOf(event: Pick<FishingEvent, 'id' | 'match'>): string {
  return event.match ?? event.id;
}
