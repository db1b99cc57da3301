import type { RatedVenue } from '../rated-venue.ts';
import type { ModelSession } from '../sessions-in-model.ts';

/** What a term beside the model speaks of. */
export type BesideName = 'room' | 'wind' | 'depth' | 'colour';

/** Why a log does not tell of a term. */
export type BesideSilence =
  | 'same-room'
  | 'no-wind-logged'
  | 'no-open-water'
  | 'not-plumbed'
  | 'one-colour'
  | 'no-margin-plumbed';

/** One point of a curve: what it stands at, and its weights on the term's effects. */
export interface CurvePoint {
  /** Empty pegs, metres of fetch, metres of depth. */
  readonly at: number;
  readonly weights: readonly number[];
}

/** One curve of a term: "force 4 and over, April to September". */
export interface BesideCurve {
  readonly group: string;
  readonly points: readonly CurvePoint[];
  /** The point nearest to a session's own value; null where the session is not of this curve. */
  readonly pointOf: (session: ModelSession) => number | null;
}

/** A few effects beside the model that compare the anglers of one match: what the day, or the bed, gave each of them. */
export interface BesideTerm {
  readonly of: BesideName;
  readonly columns: number;
  /** A session's weights on the effects; null where nothing is known of it, which then tells nothing. */
  readonly weightsOf: (session: ModelSession) => readonly number[] | null;
  readonly curves: readonly BesideCurve[];
}

/** A term, or why this venue's log says nothing of it. */
export type BesideOffer =
  | { readonly of: BesideName; readonly term: BesideTerm }
  | { readonly of: BesideName; readonly why: BesideSilence };

/** Makes a term of a venue, or says why it cannot be made. */
export type BesideMaker = (venue: RatedVenue, sessions: readonly ModelSession[]) => BesideOffer;
