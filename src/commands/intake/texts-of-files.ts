import { readFileSync, statSync } from 'node:fs';

/**
 * The texts of the files named, where the first of them is of a kind; null where it is another, cannot be read or is larger
 * than that kind ever is. A later one that cannot be read is an empty text, which its reader refuses by name.
 */
export function textsOfKind(
  paths: readonly string[],
  maxBytes: number,
  isKind: (text: string) => boolean,
): ReadonlyMap<string, string> | null {
  const textOf = (path: string): string | null => {
    try {
      return statSync(path).size <= maxBytes ? readFileSync(path, 'utf8') : null;
    } catch {
      return null;
    }
  };
  const first = textOf(paths[0] ?? '');
  if (first === null || !isKind(first)) return null;
  return new Map(paths.map((path) => [path, textOf(path) ?? '']));
}
