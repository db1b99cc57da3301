import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { SearchEntry } from '../../../src/atlas/search-entries.ts';
import { excerpt, searchGuide } from '../../../src/client/search/search-guide.ts';
import { inEnglish } from '../../../src/words/say.ts';

const peg = (water: string, name: string, text: string): SearchEntry => ({
  kind: 'peg',
  title: `${water} ${name}`,
  href: `/${water}/${name}/`,
  text,
  peg: { water, peg: name },
});
const ENTRIES: readonly SearchEntry[] = [
  peg('Kiln Pool', '23', 'Bay, Lilies. Carp move into the lilies in May.'),
  peg('Kiln Pool', '24', 'Open water.'),
  peg('Eelback', '23', 'Reeds.'),
  { kind: 'feature', title: 'Lilies', href: '/features/#where-lilies', text: 'a bed within 16 m' },
  {
    kind: 'notice',
    title: 'Otter fence',
    href: '/notices/#a',
    text: 'Works for Kiln Pool. The gate stays shut.',
    days: 'on 1 May',
  },
  { kind: 'rule', title: 'Rules of a club', href: '/rules/', text: 'No <b>fires</b> on the bank.' },
];
const search = searchGuide(ENTRIES, inEnglish);
const titles = (typed: string) =>
  search(typed).groups.flatMap(({ entries }) => entries.map(({ entry }) => entry.title));

describe('a search of the guide', () => {
  it('finds a feature and its pegs, by the beginning of a word and with a slip of the finger', () => {
    for (const typed of ['lilies', 'LILIES', 'lil', 'lillies'])
      expect(titles(typed)).toEqual(['Kiln Pool 23', 'Lilies']);
    expect(search('lilies').said).toBe('1 peg, 1 feature.');
  });

  it('asks for every word', () => {
    expect(titles('carp may')).toEqual(['Kiln Pool 23']);
    expect(titles('carp reeds')).toEqual([]);
    expect(search('carp reeds').said).toBe('Nothing here has “carp reeds”.');
  });

  it('finds notices and rules', () => {
    expect(titles('otter')).toEqual(['Otter fence']);
    expect(titles('fires')).toEqual(['Rules of a club']);
  });

  it('takes a peg by its name, and says where there is none', () => {
    expect(titles('23')).toEqual(['Kiln Pool 23', 'Eelback 23']);
    expect(titles('K23')).toEqual(['Kiln Pool 23']);
    expect(search('99').said).toBe('There is no peg 99 here.');
    expect(search('').groups).toEqual([]);
  });

  it('takes anything that is typed', () => {
    fc.assert(fc.property(fc.string({ maxLength: 80 }), (typed) => void search(typed)));
  });
});

describe('an excerpt', () => {
  it('shows the words about the first that was found, and loses none of them', () => {
    const text = `${'One word after another. '.repeat(9)}Carp move into the lilies.`;
    const pieces = excerpt(text, ['lilies']);
    expect(pieces.filter(([, isFound]) => isFound)).toEqual([['lilies', true]]);
    expect(pieces.map(([piece]) => piece).join('')).toMatch(/^… .*Carp move into the lilies\.$/);
  });

  it('is made of pieces of the text alone', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 400 }), fc.array(fc.string({ minLength: 1, maxLength: 8 })), (text, terms) => {
        const joined = excerpt(text, terms)
          .map(([piece]) => piece)
          .join('')
          .replace(/^… /, '')
          .replace(/ …$/, '');
        expect(text).toContain(joined);
      }),
    );
  });
});
