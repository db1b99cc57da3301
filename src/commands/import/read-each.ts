/** What came of reading several papers: all of them, or why one of them cannot be read at all. */
type EachRead<T> =
  | { readonly ok: true; readonly papers: readonly T[] }
  | { readonly ok: false; readonly lines: readonly string[] };

/** Reads every paper named, all or none: a `RangeError` of a reader says what is wrong with its paper, anything else is thrown on. */
export function readEach<T>(files: readonly string[], read: (file: string) => T): EachRead<T> {
  try {
    return { ok: true, papers: files.map(read) };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return { ok: false, lines: [error.message] };
  }
}
