import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import { unified } from 'unified';

interface Node {
  readonly type: string;
  readonly value?: string;
  readonly alt?: string | null;
  readonly children?: readonly Node[];
}

/** What begins a new word after it, unlike emphasis or a link within one. */
const BLOCKS = new Set(['paragraph', 'heading', 'listItem', 'tableCell', 'break', 'code']);
const parser = unified().use(remarkParse).use(remarkGfm).freeze();

/** The words of a record's Markdown, as they are read, without its marks; raw HTML is no words. */
export function markdownText(markdown: string): string {
  const words = (node: Node): string => {
    if (node.type === 'html') return ' ';
    const own = node.value ?? node.alt ?? (node.children ?? []).map(words).join('');
    return BLOCKS.has(node.type) ? `${own} ` : own;
  };
  return words(parser.parse(markdown) as Node)
    .replace(/\s+/g, ' ')
    .trim();
}
