import type { Day } from './day.ts';

/** Unit words of a venue: what a bare number means where a person left the unit out, and how figures are shown. */
export interface Units {
  readonly length: 'm' | 'ft';
  readonly weight: 'kg' | 'lb';
}

/** A group of species weighed apart (silvers, carp, …); the venue defines them. */
export interface BagPart {
  /** Lower case word used in column names: `silvers` gives `silvers_weight` and `silvers_count`. */
  readonly id: string;
  readonly name: string;
  readonly species: readonly string[];
  /** The first day on which it was weighed apart; an empty cell of an earlier day says nothing of it. */
  readonly since?: Day;
}
