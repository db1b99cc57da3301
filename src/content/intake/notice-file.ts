import type { Day } from '../../domain/day.ts';
import type { NoticeKind } from '../../domain/notice.ts';
import type { PegKey } from '../../domain/peg.ts';
import { scalarText } from '../yaml-edit/scalar-text.ts';

/** A notice as the intake writes it into `notices/`. */
export interface NewNotice {
  readonly title: string;
  readonly kind: NoticeKind;
  readonly from: Day;
  readonly until?: Day | undefined;
  /** The whole water, where it names no pegs. */
  readonly water: string;
  readonly pegs: readonly PegKey[];
  readonly text?: string | undefined;
}

/** The text of a notice's file. What was typed on the bank is plain text: its signs mean nothing in Markdown. */
export function noticeFile({ title, kind, from, until, water, pegs, text }: NewNotice): string {
  const lines = [
    '---',
    `title: ${scalarText(oneLine(title))}`,
    `kind: ${kind}`,
    `from: ${from}`,
    ...(until === undefined ? [] : [`until: ${until}`]),
    pegs.length === 0 ? `waters: [${scalarText(water)}]` : `pegs: [${pegs.map((peg) => scalarText(peg)).join(', ')}]`,
    '---',
    '',
    ...(text === undefined ? [] : [plainMarkdown(text), '']),
  ];
  return lines.join('\n');
}

function oneLine(text: string): string {
  return text.replace(/\s+/g, ' ').trim();
}

/** Escapes what Markdown would read as more than text (CommonMark 0.31, section 2.4), a line at a time. */
function plainMarkdown(text: string): string {
  return text
    .split('\n')
    .map((line) =>
      line
        .trim()
        .replace(/[\\`*_{}[\]<>#|~&!]/g, '\\$&')
        .replace(/^([+-]|\d+[.)])(?=\s|$)|^(={3,}|-{3,})$/, '\\$&'),
    )
    .join('\n');
}
