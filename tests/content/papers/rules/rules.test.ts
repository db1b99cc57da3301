import * as fc from 'fast-check';
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import { describe, expect, it } from 'vitest';
import { privateWords } from '../../../../src/content/papers/rules/private-words.ts';
import { readRules } from '../../../../src/content/papers/rules/read-rules.ts';
import { rulesMarkdown } from '../../../../src/content/papers/rules/rules-markdown.ts';

const markdownOf = (text: string): string => rulesMarkdown(readRules('card.txt', new TextEncoder().encode(text)).lines);

interface Node {
  readonly type: string;
  readonly value?: string;
  readonly children?: readonly Node[];
}
const wordsOf = (node: Node): string =>
  node.value ??
  (node.children ?? []).map(wordsOf).join(['paragraph', 'strong', 'heading'].includes(node.type) ? '' : ' ');
const typesOf = (node: Node): readonly string[] => [node.type, ...(node.children ?? []).flatMap(typesOf)];

describe('rules', () => {
  it('keeps what the club calls a rule by, counted by Markdown only where that gives the same number', () => {
    expect(markdownOf('1. One\n2. Two\n2.1 Below\n2.2 Below too\n3. Three')).toBe(
      '1. One\n2. Two\n    - **2.1** Below\n    - **2.2** Below too\n3. Three',
    );
    expect(markdownOf('1. One.\n2. Two.\n4. Four')).toBe('- **1** One.\n- **2** Two.\n- **4** Four');
    expect(markdownOf('7. NETS\n7.1 Dry.\n7.2 Soft.')).toBe('## 7. NETS\n\n- **7.1** Dry.\n- **7.2** Soft.');
    expect(markdownOf('1. One\n(a) alpha\n(i) roman\n(ii) roman\n(b) beta')).toBe(
      '1. One\n    - **a** alpha\n        - **i** roman\n        - **ii** roman\n    - **b** beta',
    );
  });

  it('takes no number of a sentence for a rule', () => {
    expect(
      markdownOf('1. Draw at 8 and fish from\n12.30 pm until 5.\n2. A net holds no more than\n50. Weigh then.'),
    ).toBe('1. Draw at 8 and fish from 12.30 pm until 5.\n2. A net holds no more than 50. Weigh then.');
  });

  it('joins a word that was parted at the end of a line', () => {
    expect(markdownOf('1. No keep-\nnets in May\nor June.')).toBe('1. No keep-nets in May or June.');
  });

  it('loses no word and lets nothing be Markdown or HTML that was typed as text', () => {
    const word = fc.stringMatching(/^[a-z<>*_[\]`#&!|~\\]{1,12}$/);
    const sentence = fc.array(word, { minLength: 1, maxLength: 8 }).map((words) => `x ${words.join(' ')}.`);
    fc.assert(
      fc.property(
        fc.array(sentence, { minLength: 1, maxLength: 12 }),
        fc.constantFrom('numbers', 'bullets', 'plain'),
        (sentences, marks) => {
          const text = sentences
            .map(
              (each, index) => `${marks === 'numbers' ? `${index + 1}. ` : marks === 'bullets' ? '• ' : '\n'}${each}`,
            )
            .join('\n');
          const tree = unified().use(remarkParse).parse(markdownOf(text)) as Node;
          expect(wordsOf(tree).split(/\s+/).filter(Boolean)).toEqual(sentences.join(' ').split(/\s+/));
          expect(
            typesOf(tree).filter((type) =>
              ['html', 'emphasis', 'link', 'image', 'inlineCode', 'definition', 'heading'].includes(type),
            ),
          ).toEqual([]);
        },
      ),
    );
  });

  it.each([
    ['Ask the Secretary, Ada Quill.', ['Ada Quill']],
    ['Secretary Ada Quill sells tickets', ['Ada Quill']],
    ['Junior tickets from Mrs Quill', ['Quill']],
    ['Bailiff A. B. Quill walks the bank', ['A. B. Quill']],
    ['Ring the Head Bailiff on 07700 900 123', ['07700 900 123']],
    ['Ring +44 (0)1632 960555 or club@quill.example', ['+44 (0)1632 960555', 'club@quill.example']],
    ['Ask the Match Secretary for a ticket', []],
    ['The Bailiff closes Kiln Pool in ice', []],
    ['Ring 999, or 105 for a power line; 50 lb of carp a net', []],
    ['No Fishing On Ice', []],
  ])('finds who is told of in "%s"', (text, expected) => {
    const line = { kind: 'text', level: 0, label: '', text, line: 1 } as const;
    const isOurs = (words: string) => words.includes('Kiln Pool');
    expect(privateWords(line, isOurs, () => false).map(({ start, end }) => text.slice(start, end))).toEqual(expected);
  });
});
