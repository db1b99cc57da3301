/** Columns every `rounds/<date>-<ref>.csv` has. */
export const REQUIRED_ROUND_COLUMNS = ['entry', 'water', 'peg'] as const;

/** Columns every round is written with, whether or not a row fills them. */
const USUAL_OPTIONAL_COLUMNS = [
  'status',
  'platform',
  'hazard',
  'place',
  'action',
  'severity',
  'likelihood',
  'clear_width',
  'lowest_branch',
  'path_width',
  'line_distance',
  'level',
  'water_temperature',
  'lat',
  'lng',
  'note',
] as const;

/** Columns it may have, in the order of `format.md`. */
export const OPTIONAL_ROUND_COLUMNS = [
  ...USUAL_OPTIONAL_COLUMNS,
  'mapped_as',
  'day',
  'by',
  'accuracy',
  'found_on',
  'severity_after',
  'likelihood_after',
  'control',
  'why',
  'until',
  'title',
  'kit',
] as const;

/** Those every round is written with, so that rounds of all years look alike. */
export const USUAL_ROUND_COLUMNS = [...REQUIRED_ROUND_COLUMNS, ...USUAL_OPTIONAL_COLUMNS] as const;

/** All of them, in the order in which a round is written; one that is not usual is left out where no row fills it. */
export const ROUND_COLUMNS = [...REQUIRED_ROUND_COLUMNS, ...OPTIONAL_ROUND_COLUMNS] as const;

export type RoundColumn = (typeof ROUND_COLUMNS)[number];
