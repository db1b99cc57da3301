import remarkParse from 'remark-parse';
import { unified } from 'unified';
import { monthsOfHeading, SEASONS } from '../domain/season.ts';
import { nearestWord } from './did-you-mean.ts';
import type { Fault } from './fault.ts';
import type { MarkdownRecord } from './sources/front-matter.ts';
import { faultOfFile } from './sources/source.ts';
import { shown } from './sources/text-place.ts';

interface BodyNode {
  readonly type: string;
  readonly value?: string;
  readonly depth?: number;
  readonly alt?: string | null;
  readonly children?: readonly BodyNode[];
  readonly position?: { readonly start: { readonly line: number; readonly column: number } };
}

const parser = unified().use(remarkParse).freeze();
const SEASON_WORDS = [...SEASONS.map(({ name }) => name), 'All year'];

/** What of a record's text will not be published as it stands: HTML, pictures, headings that miss a season by a letter. */
export function bodyFaults(file: string, { body, bodyLine }: MarkdownRecord): readonly Fault[] {
  // Most bodies hold none of the three, and parsing thousands of them twice takes seconds.
  if (!/[<!]|^##[^#]/m.test(body)) return [];
  const faults: Fault[] = [];
  const visit = (node: BodyNode) => {
    const fault = faultOf(node);
    const start = node.position?.start;
    if (fault !== null && start !== undefined) {
      const place = { line: start.line + bodyLine - 1, column: start.column };
      faults.push(faultOfFile(file, { ...fault, severity: 'warning' }, place));
    }
    for (const child of node.children ?? []) visit(child);
  };
  visit(parser.parse(body) as BodyNode);
  return faults;
}

function faultOf(node: BodyNode) {
  if (node.type === 'html') {
    if (node.value?.startsWith('<!--')) return null;
    return {
      rule: 'body-html',
      found: shown(node.value ?? ''),
      expected: 'Markdown without HTML',
      mend: 'Write it in Markdown; HTML is left out of the guide.',
    };
  }
  if (node.type === 'image' || node.type === 'imageReference') {
    return {
      rule: 'body-picture',
      found: `the picture ${shown(node.alt ?? '')}`,
      expected: 'text',
      mend: 'Name pictures under photos in the front matter of a peg; those in the text are left out of the guide.',
    };
  }
  if (node.type !== 'heading' || node.depth !== 2) return null;
  const heading = (node.children ?? []).map(({ value }) => value ?? '').join('');
  const meant = monthsOfHeading(heading).length > 0 ? null : nearestWord(heading, SEASON_WORDS);
  if (meant === null) return null;
  return {
    rule: 'body-season',
    found: `the heading ${shown(heading)}`,
    expected: `a season, All year, or months such as April to June`,
    mend: `Did you mean ${meant}? As it stands it is a note without months.`,
  };
}
