import type { RuleLine } from './rule-line.ts';

/** What a line of rules begins with, and the words behind it. */
export interface RuleMark {
  readonly label: string;
  readonly level: number;
  readonly text: string;
}

/** Items that are still open, the outermost first, with the blanks each began with. */
export type OpenItems = readonly { readonly label: string; readonly level: number; readonly indent: number }[];

const NUMBER = /^(\d{1,3}(?:\.\d{1,3})*)([.):]?)\s+(\S.*)$/;
const LETTER = /^\(?([a-z]|[ivx]{2,5})[.)]\s+(\S.*)$/i;
/** Bullets as typed, and the ones word processors leave behind in plain text. */
const BULLET = /^(?:[•◦▪●·*–—-]|\uf0b7|o(?=\s{2,}))\s+(\S.*)$/;

/**
 * Reads the number, letter or bullet that begins a rule. A number at the head of a wrapped line ("no more than / 30. Nets…") is none:
 * it has to go on from the numbers before it.
 * @param before the line above, null where it is blank
 */
export function ruleMark(line: string, indent: number, open: OpenItems, before: RuleLine | null): RuleMark | null {
  return numberMark(line, open, before) ?? letterMark(line, open) ?? bulletMark(line, indent, open, before);
}

function numberMark(line: string, open: OpenItems, before: RuleLine | null): RuleMark | null {
  const [, label, stop, text] = NUMBER.exec(line) ?? [];
  if (label === undefined || text === undefined) return null;
  const parts = label.split('.').map(Number);
  const level = parts.length;
  if (level === 1 && stop === '') return null;
  const last = [...open].reverse().find((item) => item.level === level && /^\d/.test(item.label));
  const lastNumber = last === undefined ? null : Number(last.label.split('.').at(-1));
  const own = parts.at(-1)!;
  const isFirst = own <= 1;
  const goesOn = lastNumber !== null && own > lastNumber && own <= lastNumber + 20;
  const isApart = before === null || /[.;:!?)]$/.test(before.text) || before.kind === 'heading';
  if (!isFirst && !(goesOn && (isApart || own === lastNumber! + 1)) && !(lastNumber === null && isApart)) return null;
  // "12.30 pm" is a time unless the numbers before it lead there.
  if (level > 1 && !isFirst && !goesOn) return null;
  return { label, level, text };
}

function letterMark(line: string, open: OpenItems): RuleMark | null {
  const [, written, text] = LETTER.exec(line) ?? [];
  if (written === undefined || text === undefined) return null;
  const label = written.toLowerCase();
  const numbered = [...open].reverse().find((item) => /^\d/.test(item.label));
  const base = numbered?.level ?? 0;
  const letters = [...open].reverse().find((item) => item.level === base + 1 && /^[a-z]$/.test(item.label));
  const next = letters === undefined ? 'a' : String.fromCharCode(letters.label.charCodeAt(0) + 1);
  if (label === next) return { label, level: base + 1, text };
  const isRoman = /^[ivx]+$/.test(label);
  if (isRoman) return { label, level: base + (letters === undefined ? 1 : 2), text };
  // A letter that goes on from none is the first word of a sentence ("A. Rod licences") or a list that begins late.
  return { label, level: base + 1, text };
}

function bulletMark(line: string, indent: number, open: OpenItems, before: RuleLine | null): RuleMark | null {
  const text = BULLET.exec(line)?.[1];
  if (text === undefined) return null;
  const sibling = [...open].reverse().find((item) => item.label === '' && item.indent === indent);
  if (sibling !== undefined) return { label: '', level: sibling.level, text };
  const above = open.at(-1);
  const isBelow = above !== undefined && (indent > above.indent || before?.text.endsWith(':') === true);
  const outer = [...open].reverse().find((item) => item.indent < indent);
  return { label: '', level: isBelow ? above.level + 1 : (outer?.level ?? 0) + 1, text };
}
