import { anglerName } from '../../content/anglers/angler-name.ts';
import type { ResultMatch } from '../../content/papers/results/result-row.ts';

/**
 * Warnings of places where a name of the papers stands: in the venue folder notes, rules and file names are published, and a
 * paper's own name is kept with its answers. The name itself is not printed, so that a log of this command holds none.
 */
export function namesInFolder(
  texts: ReadonlyMap<string, string>,
  matches: readonly ResultMatch[],
  papers: readonly string[],
): readonly string[] {
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
  const lines = papers.flatMap((file, index) => (holdsOne(spoken(file), names) ? [paperWarning(index + 1)] : []));
  for (const [path, text] of texts) {
    if (!path.endsWith('.md')) continue;
    if (holdsOne(spoken(path), names)) lines.push(warning(path, 'the name of the file'));
    text.split('\n').forEach((line, index) => {
      if (holdsOne(line, names)) lines.push(warning(`${path}:${index + 1}`, 'the text'));
    });
  }
  return lines;
}

/** A path as words. */
function spoken(path: string): string {
  return path.replace(/[/\\_.-]+/g, ' ');
}

function paperWarning(number: number): string {
  return `Paper ${number} of these: warning: the name of the file holds that of somebody on it, and answers are kept under it. Give it another name first.`;
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
