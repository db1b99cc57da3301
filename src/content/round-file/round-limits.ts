/** How large a bank round may be: the phone keeps within it, the intake refuses what is beyond. */
export const ROUND_LIMITS = {
  /** 64 MiB, some 120 photos as the phone shrinks them. */
  fileBytes: 64 * 1024 * 1024,
  photos: 120,
  /** Base64 of a 3 MiB picture; the phone's are a tenth of it. */
  photoCharacters: 4 * 1024 * 1024,
  pegs: 2000,
  notices: 40,
  /** A note and the reason of a closure share one cell of the folder's file of rounds. */
  noteCharacters: 900,
  placeCharacters: 200,
} as const;
