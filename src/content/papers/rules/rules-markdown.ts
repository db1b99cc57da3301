import type { RuleLine } from './rule-line.ts';

/** Blanks that put a list into the item above it, wide enough for any of the marks written here. */
const INDENT = 4;

/**
 * The rules as the text of `venue.md`: headings, sentences, and lists in one another. A rule keeps the number the club calls
 * it by: where Markdown's own counting would give another one, the number is written out.
 */
export function rulesMarkdown(lines: readonly RuleLine[]): string {
  const out: string[] = [];
  lines.forEach((line, index) => {
    if (line.kind === 'heading') out.push(...gap(out), `## ${escaped(line.text)}`, '');
    else if (line.kind === 'text') out.push(...gap(out), sentence(line.text), '');
    else {
      if (lines[index - 1]?.kind !== 'item') out.push(...gap(out));
      out.push(`${' '.repeat(INDENT * (depthOf(lines, index) - 1))}${markOf(lines, index)} ${sentence(line.text)}`);
    }
  });
  while (out.at(-1) === '') out.pop();
  return out.join('\n');
}

function gap(out: readonly string[]): readonly string[] {
  return out.length === 0 || out.at(-1) === '' ? [] : [''];
}

/** How many items stand around this one, itself counted; a level that was skipped counts for none. */
function depthOf(lines: readonly RuleLine[], index: number): number {
  let depth = 1;
  let { level } = lines[index]!;
  for (let above = index - 1; above >= 0 && lines[above]!.kind === 'item' && level > 1; above--) {
    if (lines[above]!.level >= level) continue;
    level = lines[above]!.level;
    depth += 1;
  }
  return depth;
}

/** `1.` where the list counts one by one as Markdown does, else a dash with the club's own number behind it. */
function markOf(lines: readonly RuleLine[], index: number): string {
  const { label } = lines[index]!;
  if (label === '') return '-';
  return siblingsOf(lines, index).every((sibling, place) => sibling.label === String(place + 1))
    ? `${label}.`
    : `- **${escaped(label)}**`;
}

function siblingsOf(lines: readonly RuleLine[], index: number): readonly RuleLine[] {
  const { level } = lines[index]!;
  const isWithin = (line: RuleLine | undefined): boolean => line?.kind === 'item' && line.level >= level;
  let from = index;
  while (isWithin(lines[from - 1])) from -= 1;
  let to = index;
  while (isWithin(lines[to + 1])) to += 1;
  return lines.slice(from, to + 1).filter((line) => line.level === level);
}

/** Text that means itself in Markdown, whatever marks or HTML it holds. */
function escaped(text: string): string {
  return text.replace(/[\\`*_[\]<>|~#&]/g, '\\$&').replace(/^([-+])(?=\s)/, '\\$1');
}

/** A sentence may begin with what would else be the number of a list. */
function sentence(text: string): string {
  return escaped(text).replace(/^(\d{1,9})([.)])(?=\s)/, '$1\\$2');
}
