import { isMap } from 'yaml';
import type { MatchSection } from '../domain/match.ts';
import type { PegKey } from '../domain/peg.ts';
import { CannotEdit, editablePlace, findPair, keyStart, lineBreak, readYaml } from './yaml-edit/yaml-place.ts';

/**
 * Puts a plan into the text of a match's file: `pegs` and `kept` are replaced where they stand, or follow the other fields,
 * and no other byte changes.
 * @throws CannotEdit where the file is not laid out as a record
 */
export function withPlan(text: string, plan: readonly MatchSection[], kept: readonly PegKey[]): string {
  const sections = plan.map(({ name, pegs }) => `  ${name}: [${pegs.join(', ')}]`);
  const withPegs = withBlock(text, 'pegs', ['pegs:', ...sections]);
  return withBlock(withPegs, 'kept', kept.length === 0 ? null : [`kept: [${kept.join(', ')}]`]);
}

/** Sets one top-level field to lines of its own, or takes it out. */
function withBlock(text: string, field: string, lines: readonly string[] | null): string {
  const { start, end } = editablePlace(text);
  const yaml = text.slice(start, end);
  const root: unknown = readYaml(yaml).contents;
  if (!isMap(root) || root.flow === true) throw new CannotEdit('its front matter is no list of fields, one a line');
  const ending = lineBreak(text);
  const block = lines === null ? '' : lines.map((line) => line + ending).join('');
  const pair = findPair(root, field);
  const next = pair === undefined ? undefined : root.items[root.items.indexOf(pair) + 1];
  const from = pair === undefined ? yaml.length : keyStart(pair);
  const to = pair === undefined ? from : endOfBlock(yaml, from, next === undefined ? yaml.length : keyStart(next));
  const gap = from === 0 || yaml[from - 1] === '\n' ? '' : ending;
  return text.slice(0, start) + yaml.slice(0, from) + gap + block + yaml.slice(to) + text.slice(end);
}

/** Where a field's lines end: comments that stand above the next field belong to that. */
function endOfBlock(yaml: string, from: number, next: number): number {
  const lines = yaml.slice(from, next).split(/(?<=\n)/);
  while (lines.length > 1 && /^\s*(?:#.*)?\r?\n?$/.test(lines.at(-1)!)) lines.pop();
  return from + lines.join('').length;
}

/** A first file of a match. */
export function firstMatchFile(match: {
  readonly name: string;
  readonly date: string;
  readonly waters: readonly string[];
  readonly entries: number;
  readonly sections: number;
  readonly apart: string | null;
}): string {
  return [
    '---',
    `name: ${JSON.stringify(match.name)}`,
    `date: ${match.date}`,
    `waters: [${match.waters.join(', ')}]`,
    `entries: ${match.entries}`,
    `sections: ${match.sections}`,
    ...(match.apart === null ? [] : [`apart: ${match.apart}`]),
    'status: planned',
    '---',
    '',
  ].join('\n');
}
