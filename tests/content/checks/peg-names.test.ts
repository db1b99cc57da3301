import { expect, test } from 'vitest';
import { messagesOf, replacing } from '../small-venue.ts';

const PEG_3A = `---
peg: "3A"
water: mill-pond
position: { lat: 52.74999, lng: -0.0504 }
facing: 0
status: open
---
`;

test('accepts pegs with names of their own', () => {
  expect(messagesOf({})).toEqual([]);
});

test('refuses a copied record that still bears the name of its neighbour', () => {
  expect(messagesOf({ 'pegs/mill-pond/2.md': replacing('peg: "2"', 'peg: "1"') })).toMatchInlineSnapshot(`
    [
      "pegs/mill-pond/2.md:2:6 error Unexpected "1" for peg, expected "2", the name of the file. Correct the peg, or rename the file. (peg-file-name)",
      "pegs/mill-pond/2.md:2:6 error Unexpected peg "1" a second time, expected each peg of mill-pond once; the first is in pegs/mill-pond/1.md. Delete one of the two records, or give this one its own name. (peg-duplicate)",
    ]
  `);
});

test('refuses two pegs that differ in capitals alone', () => {
  expect(
    messagesOf({
      'pegs/mill-pond/3A.md': () => PEG_3A,
      'pegs/mill-pond/3a.md': () => PEG_3A.replace('3A', '3a').replace('-0.0504', '-0.05045'),
    }),
  ).toMatchInlineSnapshot(`
    [
      "pegs/mill-pond/3a.md:1:1 warning Unexpected name that differs from pegs/mill-pond/3A.md in capitals alone, expected names that every system tells apart. Rename one of the two: a copy of the folder on Windows or macOS would be without the other. (file-name-capitals)",
      "pegs/mill-pond/3A.md:2:6 error Unexpected peg "3A" a second time, expected each peg of mill-pond once; the first is in pegs/mill-pond/3a.md. Delete one of the two records, or give this one its own name. (peg-duplicate)",
    ]
  `);
});
