import remarkParse from 'remark-parse';
import { unified } from 'unified';
import type { SeasonalNote } from '../domain/peg.ts';
import { monthsOfHeading } from '../domain/season.ts';

interface MarkdownNode {
  readonly type: string;
  readonly depth?: number;
  readonly value?: string;
  readonly children?: readonly MarkdownNode[];
  readonly position?: {
    readonly start: { readonly offset?: number };
    readonly end: { readonly offset?: number };
  };
}

const parser = unified().use(remarkParse).freeze();

/**
 * Splits a record's text at its second-level headings. Text before the first of them is a note without a heading; a
 * heading that names months makes a seasonal note of what follows.
 */
export function seasonalNotes(markdown: string): readonly SeasonalNote[] {
  const tree = parser.parse(markdown) as MarkdownNode;
  const headings = (tree.children ?? []).filter(({ type, depth }) => type === 'heading' && depth === 2);
  const starts = headings.map(({ position }) => position?.start.offset ?? 0);
  const before = markdown.slice(0, starts[0] ?? markdown.length).trim();
  const notes: SeasonalNote[] = before === '' ? [] : [{ heading: '', months: [], markdown: before }];
  headings.forEach((node, index) => {
    const heading = textOf(node).trim();
    const from = node.position?.end.offset ?? 0;
    const text = markdown.slice(from, starts[index + 1] ?? markdown.length).trim();
    notes.push({ heading, months: monthsOfHeading(heading), markdown: text });
  });
  return notes;
}

function textOf(node: MarkdownNode): string {
  return node.value ?? (node.children ?? []).map(textOf).join('');
}
