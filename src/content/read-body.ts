import remarkParse from 'remark-parse';
import { unified } from 'unified';
import type { SeasonalNote } from '../domain/peg.ts';
import { monthsOfHeading, SEASONS } from '../domain/season.ts';
import { bodyLimitFaults } from './body-limits.ts';
import { nearestWord } from './did-you-mean.ts';
import type { Fault } from './fault.ts';
import type { MarkdownRecord } from './sources/front-matter.ts';
import { type FieldFault, faultOfFile } from './sources/source.ts';
import { shown } from './sources/text-place.ts';

/** What of a Markdown tree (mdast) is looked at here. */
interface BodyNode {
  readonly type: string;
  readonly depth?: number;
  readonly value?: string;
  readonly alt?: string | null;
  readonly url?: string;
  readonly children?: readonly BodyNode[];
  readonly position?: {
    readonly start: { readonly line: number; readonly column: number; readonly offset?: number };
    readonly end: { readonly offset?: number };
  };
}

/** The text of a record below its front matter. */
export interface Body {
  readonly notes: readonly SeasonalNote[];
  readonly faults: readonly Fault[];
}

const parser = unified().use(remarkParse).freeze();
const SEASON_WORDS = [...SEASONS.map(({ name }) => name), 'All year'];

/**
 * Reads a record's text: its notes by second-level heading, those whose heading names months being seasonal ones; and as
 * warnings what will not be published as it stands: HTML, pictures, links that lead nowhere, headings that miss a season by a letter.
 */
export function readBody(record: MarkdownRecord): Body {
  const { source, body, bodyLine } = record;
  const beyond = bodyLimitFaults(record);
  if (beyond.length > 0) return { notes: [], faults: beyond };
  // Most bodies of a large venue are a line of plain text, and a parse costs as much as all the rest of a record.
  if (!/[<![]|^ {0,3}(?:#|-|=)/m.test(body)) return { notes: plainNotes(body), faults: [] };
  const tree = parser.parse(body) as BodyNode;
  const faults: Fault[] = [];
  const visit = (node: BodyNode) => {
    const fault = faultOf(node);
    const start = node.position?.start;
    if (fault !== null && start !== undefined) {
      const place = { line: start.line + bodyLine - 1, column: start.column };
      faults.push(faultOfFile(source.file, { ...fault, severity: 'warning' }, place));
    }
    for (const child of node.children ?? []) visit(child);
  };
  visit(tree);
  return { notes: notesOf(body, tree), faults };
}

function plainNotes(body: string): readonly SeasonalNote[] {
  const markdown = body.trim();
  return markdown === '' ? [] : [{ heading: '', months: [], markdown }];
}

function notesOf(body: string, tree: BodyNode): readonly SeasonalNote[] {
  const headings = (tree.children ?? []).filter(({ type, depth }) => type === 'heading' && depth === 2);
  const starts = headings.map(({ position }) => position?.start.offset ?? 0);
  return [
    ...plainNotes(body.slice(0, starts[0] ?? body.length)),
    ...headings.map((node, index) => {
      const heading = textOf(node).trim();
      const markdown = body.slice(node.position?.end.offset ?? 0, starts[index + 1] ?? body.length).trim();
      return { heading, months: monthsOfHeading(heading), markdown };
    }),
  ];
}

function textOf(node: BodyNode): string {
  return node.value ?? (node.children ?? []).map(textOf).join('');
}

function faultOf(node: BodyNode): FieldFault | null {
  if (node.type === 'html') return node.value?.startsWith('<!--') === true ? null : html(node.value ?? '');
  if (node.type === 'image' || node.type === 'imageReference') return picture(node.alt ?? '');
  if (node.type === 'link' || node.type === 'definition') return strayLink(node.url ?? '');
  return node.type === 'heading' && node.depth === 2 ? missedSeason(textOf(node)) : null;
}

function html(value: string): FieldFault {
  return {
    rule: 'body-html',
    found: shown(value),
    expected: 'Markdown without HTML',
    mend: 'Write it in Markdown; HTML is left out of the guide.',
  };
}

function picture(alt: string): FieldFault {
  return {
    rule: 'body-picture',
    found: `the picture ${shown(alt)}`,
    expected: 'text',
    mend: 'Name pictures under photos in the front matter of a peg; those in the text are left out of the guide.',
  };
}

/** The guide's pages lie elsewhere than the records, so a way from file to file leads nowhere there. */
function strayLink(url: string): FieldFault | null {
  if (/^(?:https?:\/\/|mailto:|tel:)/i.test(url) || url.startsWith('#')) return null;
  return {
    rule: 'body-link',
    found: `the link to ${shown(url)}`,
    expected: 'the whole address of a page (https://…), a mailbox (mailto:…) or a telephone (tel:…)',
    mend: 'Write the address out from https:// on, or take the link out.',
  };
}

function missedSeason(heading: string): FieldFault | null {
  const meant = monthsOfHeading(heading).length > 0 ? null : nearestWord(heading, SEASON_WORDS);
  if (meant === null) return null;
  return {
    rule: 'body-season',
    found: `the heading ${shown(heading)}`,
    expected: 'a season, All year, or months such as April to June',
    mend: `Did you mean ${meant}? As it stands it is a note without months.`,
  };
}
