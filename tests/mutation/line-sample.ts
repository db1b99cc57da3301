import { seededChance } from '../demo/chance.ts';

/** One file of a room as text. */
export interface SourceFile {
  readonly path: string;
  readonly text: string;
}

/** Lines that hold no statement to change: blank, a comment, an import, a closing bracket. */
const HOLDS_NOTHING = /^\s*(?:$|\/\/|\/?\*|import\b|export (?:\*|type\b|interface\b|\{)|[)\]};,]+$)/;

/**
 * Ranges `file:line-line` of lines drawn from a room, every line that could hold a mutant with the same chance; the same seed and
 * files give the same ranges. What spans several lines (a whole block emptied, say) is in no single line and so in no sample: such
 * changes are the easiest to notice, and a score without them is the stricter one.
 */
export function lineSample(files: readonly SourceFile[], lines: number, seed: number): string[] {
  const ordered = files.toSorted((a, b) => (a.path < b.path ? -1 : 1));
  const places = ordered.flatMap(({ path, text }) =>
    text.split('\n').flatMap((line, i) => (HOLDS_NOTHING.test(line) ? [] : [`${path}:${i + 1}-${i + 1}`])),
  );
  return seededChance(seed).shuffled(places).slice(0, lines);
}
