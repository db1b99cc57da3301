import fc from 'fast-check';
import { expect, it } from 'vitest';
import { changedText } from '../../../src/client/offline/file-changes.ts';
import { packChanges, unpackChanges } from '../../../src/client/offline/packed-changes.ts';
import { textChange } from '../../../src/commands/guide-folder/text-change.ts';

const words = fc.array(
  fc.constantFrom(
    '<p>',
    '</p>',
    'peg ',
    '1.25 ',
    '0.98,',
    '1.07',
    '10',
    '007',
    '1e5',
    'deadbeef ',
    '12345678 ',
    '99999999999999999999',
    'M',
    '"',
    '; ',
    '\n',
    'é',
    '🐟',
  ),
  {
    maxLength: 60,
  },
);

it('makes the second text of the first, whatever the two are', () => {
  fc.assert(
    fc.property(words, words, fc.string(), fc.string(), (before, after, odd, other) => {
      for (const [a, b] of [
        [before.join(''), after.join('')],
        [odd, other],
        [before.join('') + odd, odd + after.join('')],
      ] as const) {
        const change = textChange(a, b);
        expect(changedText(a, change)).toBe(b);
        const files = { page: change, other: change };
        expect(unpackChanges(JSON.parse(JSON.stringify(packChanges({ from: 'a', to: 'b', files }))))?.files).toEqual(
          files,
        );
      }
    }),
  );
});

it('says little where little changed', () => {
  const page = Array.from({ length: 4000 }, (_, i) => `<td>${i} m</td> `).join('');
  const change = textChange(
    page,
    page.replace('>1234 m<', '>1235 m<').replace('<td>3000 m</td>', '').replace('>20 m<', '>20 m, more<'),
  );
  expect(JSON.stringify(change).length).toBeLessThan(80);
  expect(textChange(page, page)).toEqual([]);
});
