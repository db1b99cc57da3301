/** The languages of a guide's pages for anglers. Each is a folder of words in `src/words/`. */
export const LANGUAGE_CODES = ['en', 'cy'] as const;

export type Language = (typeof LANGUAGE_CODES)[number];
