import rehypeSanitize, { defaultSchema } from 'rehype-sanitize';
import rehypeStringify from 'rehype-stringify';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import remarkRehype from 'remark-rehype';
import { unified } from 'unified';

type Plugin = () => (tree: Node) => void;
interface Node {
  readonly children?: readonly Node[];
  tagName?: string;
  depth?: number;
  readonly type: string;
}

/** Venue files are untrusted: words, lists, tables and links pass; pictures, raw HTML, styles and scripts do not. */
const SCHEMA = {
  ...defaultSchema,
  tagNames: (defaultSchema.tagNames ?? []).filter((tag) => !['img', 'picture', 'source', 'input'].includes(tag)),
  attributes: { a: ['href'], ol: ['start'] },
  protocols: { href: ['http', 'https', 'mailto', 'tel'] },
};

/** HTML of a record's Markdown. Its headings start at `topLevel`, so that they fit below the page's own. */
export function markdownHtml(markdown: string, topLevel: 2 | 3 | 4 = 3): string {
  return String(processors[topLevel].processSync(markdown));
}

const headingsFrom =
  (topLevel: number): Plugin =>
  () =>
  (tree) => {
    const headings: Node[] = [];
    const visit = (node: Node): void => {
      if (node.type === 'heading') headings.push(node);
      for (const child of node.children ?? []) visit(child);
    };
    visit(tree);
    const shift = topLevel - Math.min(...headings.map(({ depth }) => depth ?? 1));
    for (const heading of headings) heading.depth = Math.min(6, (heading.depth ?? 1) + shift);
  };

const processorFrom = (topLevel: number) =>
  unified()
    .use(remarkParse)
    .use(remarkGfm)
    .use(headingsFrom(topLevel))
    .use(remarkRehype)
    .use(rehypeSanitize, SCHEMA)
    .use(rehypeStringify)
    .freeze();

const processors = { 2: processorFrom(2), 3: processorFrom(3), 4: processorFrom(4) };
