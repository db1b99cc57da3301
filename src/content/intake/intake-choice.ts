/** A field the round and the folder say different things of, both changed since the guide the round was made from. */
export interface Conflict {
  /** Tells it from every other of one intake: round, peg and field. */
  readonly id: string;
  readonly peg: string;
  readonly field: string;
  /** What the guide in the phone said; null where it said nothing. */
  readonly guide: string | null;
  readonly folder: string | null;
  readonly round: string;
}

export type Choice = 'keep-folder' | 'take-round';

/** The choice made for a conflict, undefined where none has been made yet. */
export type Choose = (conflict: Conflict) => Choice | undefined;

/** One thing an intake does, for the summary. */
export interface Change {
  /** Peg or file it concerns. */
  readonly where: string;
  readonly field: string;
  /** Null where there was nothing. */
  readonly from: string | null;
  readonly to: string;
}
