import { type BorderedTerm, borderedTerm } from '../bordered-term.ts';
import type { LatentFit, LatentModel } from '../engine/latent-model.ts';
import { sparseRows } from '../engine/sparse-rows.ts';
import type { RatedVenue } from '../rated-venue.ts';
import type { ModelSession } from '../sessions-in-model.ts';
import type { BesideMaker, BesideTerm } from './beside-term.ts';
import { colourTerm } from './colour-term.ts';
import { depthTerm } from './depth-term.ts';
import { roomTerm } from './room-term.ts';
import { windTerm } from './wind-term.ts';

/** Every term that has to earn its place, in the order they are told in. */
const BESIDE_TERMS: readonly BesideMaker[] = [roomTerm, windTerm, depthTerm, colourTerm];

/** Scale of the half-normal prior of how far one effect of such a term spreads bags. */
const BESIDE_SD = 0.2;

/** What a fitted model and its sessions are, as a term beside it needs them. */
export interface FittedRows {
  readonly latent: LatentModel;
  readonly fit: LatentFit;
  readonly sessions: readonly ModelSession[];
}

/** A term beside a fitted model, a row for every session; one of which nothing is known has no weight. */
export function fitBeside(term: BesideTerm, { latent, fit, sessions }: FittedRows): BorderedTerm {
  const rows = sparseRows(
    sessions.map((session) =>
      (term.weightsOf(session) ?? []).flatMap((weight, column) => (weight === 0 ? [] : [{ column, weight }])),
    ),
  );
  return borderedTerm(latent, fit, { columns: term.columns, rows }, BESIDE_SD);
}

/** The offers of a venue's log, made of its sessions. */
export function besideOffers(venue: RatedVenue, sessions: readonly ModelSession[]) {
  return BESIDE_TERMS.map((make) => make(venue, sessions));
}
