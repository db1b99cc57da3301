/** A season of matches that are counted together. */
export interface League {
  /** The file's name without ending. */
  readonly id: string;
  readonly name: string;
  /** Ids of its matches, in the season's order. */
  readonly matches: readonly string[];
  /** So many of the best matches count; all where null. */
  readonly best: number | null;
  /** Points for a match that was missed, where few are good; null: one more than the largest field of its matches. */
  readonly missed: number | null;
  /** Of the section, or of the whole match. */
  readonly counts: 'section-points' | 'match-places';
  readonly markdown: string;
}
