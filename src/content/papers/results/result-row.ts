import type { Day } from '../../../domain/day.ts';
import type { Listing, SessionStatus } from '../../../domain/session.ts';

/** One angler's line of a result sheet, understood. The name is held in memory until a reference stands in its place. */
export interface ResultRow {
  readonly water: string;
  readonly peg: string;
  readonly section: string | null;
  readonly name: string;
  readonly status: SessionStatus;
  /** As `sessions.csv` writes it, nothing rounded; only of a weighed row. */
  readonly weight: { readonly grams: number; readonly written: string } | null;
  /** An empty weight and a count of null take out what the log says of a part; what is not named stays as it is there. */
  readonly parts: Readonly<Record<string, { readonly written?: string; readonly count?: number | null }>>;
  readonly position: number | null;
  /** Where it stands, for a person: "july.xlsx, row 14". */
  readonly place: string;
}

/** One match as its paper tells it. */
export interface ResultMatch {
  readonly file: string;
  readonly day: Day;
  readonly rows: readonly ResultRow[];
  readonly listing: Listing;
  readonly framePlaces: number;
  readonly fished: number | null;
  readonly hours: number;
  /** Groups the events of one match over several waters. */
  readonly match?: string;
}

/** Something of a paper that goes nowhere, with the reason. */
export interface Unread {
  readonly place: string;
  readonly what: string;
  readonly why: string;
}
