/** Columns every `rounds/<date>-<ref>.csv` has. */
export const REQUIRED_ROUND_COLUMNS = ['entry', 'water', 'peg'] as const;

/** Columns it may have, in the order of `format.md`. */
export const OPTIONAL_ROUND_COLUMNS = [
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

/** All of them, as a round is written. */
export const ROUND_COLUMNS = [...REQUIRED_ROUND_COLUMNS, ...OPTIONAL_ROUND_COLUMNS] as const;
