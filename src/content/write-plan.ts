import { isMap, parseDocument } from 'yaml';
import type { MatchSection } from '../domain/match.ts';
import type { PegKey } from '../domain/peg.ts';

/** A match's file cannot be changed safely: it is not laid out as a record. */
export class CannotWritePlan extends Error {}

/**
 * Puts a plan into the text of a match's file: `pegs` and `kept` are replaced where they stand, or follow the other fields,
 * and no other byte changes.
 */
export function withPlan(text: string, plan: readonly MatchSection[], kept: readonly PegKey[]): string {
  const sections = plan.map(({ name, pegs }) => `  ${name}: [${pegs.join(', ')}]`);
  const withPegs = withBlock(text, 'pegs', ['pegs:', ...sections]);
  return withBlock(withPegs, 'kept', kept.length === 0 ? null : [`kept: [${kept.join(', ')}]`]);
}

/** Sets one top-level field to lines of its own, or takes it out. */
function withBlock(text: string, field: string, lines: readonly string[] | null): string {
  const opening = /^\uFEFF?---[ \t]*\r?\n/.exec(text);
  const closing = opening === null ? null : /^---[ \t]*$/m.exec(text.slice(opening[0].length).replaceAll('\r', ' '));
  if (opening === null || closing === null) throw new CannotWritePlan('no front matter between two lines of ---');
  const start = opening[0].length;
  const yaml = text.slice(start, start + closing.index);
  const document = parseDocument(yaml, { logLevel: 'error' });
  if (document.errors.length > 0 || !isMap(document.contents) || document.contents.flow === true) {
    throw new CannotWritePlan('front matter that is no list of fields, one a line');
  }
  const lineBreak = text.includes('\r\n') ? '\r\n' : '\n';
  const block = lines === null ? '' : `${lines.join(lineBreak)}${lineBreak}`;
  const pairs = document.contents.items as readonly {
    readonly key: { readonly value?: unknown; readonly range?: readonly [number, number, number] | null };
  }[];
  const index = pairs.findIndex(({ key }) => String(key.value) === field);
  const from = index === -1 ? yaml.length : (pairs[index]!.key.range?.[0] ?? yaml.length);
  const next = index === -1 ? undefined : pairs[index + 1]?.key.range?.[0];
  const to = index === -1 ? yaml.length : endOfBlock(yaml, from, next ?? yaml.length);
  const before = yaml.slice(0, from);
  const gap = before === '' || before.endsWith('\n') ? '' : lineBreak;
  return text.slice(0, start) + before + gap + block + yaml.slice(to) + text.slice(start + closing.index);
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
