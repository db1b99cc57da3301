/** Where the front matter of a record stands, as offsets into its text: from behind the first line of `---` up to the second. */
export interface FrontMatterPlace {
  readonly start: number;
  readonly end: number;
  /** Behind the second line of `---` and its line break. */
  readonly body: number;
}

/**
 * Finds the front matter of a record between two lines of `---`, by whatever its lines end with: a line feed, a carriage
 * return or both. A byte order mark may stand before it, blanks behind either `---`.
 */
export function frontMatterPlace(text: string): FrontMatterPlace | 'missing' | 'unclosed' {
  const opening = /^\uFEFF?---[ \t]*(?:\r\n?|\n)/.exec(text);
  if (opening === null) return 'missing';
  const start = opening[0].length;
  const closing = /(?<![^\r\n])---[ \t]*(?:\r\n?|\n|$)/.exec(text.slice(start));
  if (closing === null) return 'unclosed';
  const end = start + closing.index;
  return { start, end, body: end + closing[0].length };
}
