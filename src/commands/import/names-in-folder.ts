import { anglerName } from '../../content/anglers/angler-name.ts';
import type { ResultMatch } from '../../content/papers/results/result-row.ts';

/**
 * Warnings of places in the venue folder where a name of the papers stands: notes, rules and file names are published. The
 * name itself is not printed, so that a log of this command holds none.
 */
export function namesInFolder(texts: ReadonlyMap<string, string>, matches: readonly ResultMatch[]): readonly string[] {
  const names = new Set(
    matches.flatMap(({ rows }) =>
      rows.flatMap(({ name }) => {
        const read = anglerName(name);
        // A surname alone may be a word like any other.
        return read === null || read.isInitialOnly ? [] : [read.full];
      }),
    ),
  );
  if (names.size === 0) return [];
  const lines: string[] = [];
  for (const [path, text] of texts) {
    if (!path.endsWith('.md')) continue;
    if (holdsOne(path.replace(/[/_.-]+/g, ' '), names)) lines.push(warning(path, 'the name of the file'));
    text.split('\n').forEach((line, index) => {
      if (holdsOne(line, names)) lines.push(warning(`${path}:${index + 1}`, 'the text'));
    });
  }
  return lines;
}

function holdsOne(text: string, names: ReadonlySet<string>): boolean {
  const words = text
    .normalize('NFKD')
    .replace(/[\p{M}'’`]+/gu, '')
    .toLowerCase()
    .split(/[^\p{L}]+/u);
  return words.some(
    (_, index) =>
      names.has(words.slice(index, index + 2).join(' ')) || names.has(words.slice(index, index + 3).join(' ')),
  );
}

function warning(place: string, where: string): string {
  return `${place}: warning: ${where} holds the name of somebody on these papers, and it is published. Write a role instead.`;
}
