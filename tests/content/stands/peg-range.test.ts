import { expect, test } from 'vitest';
import { isInRange, readRange, readShift, shiftedNumber } from '../../../src/content/stands/peg-range.ts';

test.each([
  ['10-18', { first: 10, last: 18 }],
  ['10..18', { first: 10, last: 18 }],
  ['12', { first: 12, last: 12 }],
  ['10-', { first: 10, last: Number.POSITIVE_INFINITY }],
  ['18-10', null],
  ['ten', null],
  ['-3', null],
  ['', null],
])('reads the run %s', (written, range) => expect(readRange(written)).toEqual(range));

test.each([
  ['+1', 1],
  ['1', 1],
  ['-2', -2],
  ['−2', -2],
  ['0', null],
  ['+0', null],
  ['1.5', null],
  ['', null],
])('reads the shift %s', (written, shift) => expect(readShift(written)).toBe(shift));

test('a letter goes with its number, noughts in front stay, and names that are no numbers are in no run', () => {
  const run = { first: 9, last: 14 };
  expect(['9', '014', '14a', '15', 'A3', '14-b'].map((peg) => isInRange({ peg }, run))).toEqual([
    true,
    true,
    true,
    false,
    false,
    false,
  ]);
  expect([shiftedNumber('014', 1), shiftedNumber('14a', -1), shiftedNumber('099', 1), shiftedNumber('9', 1)]).toEqual([
    '015',
    '13a',
    '100',
    '10',
  ]);
  expect([shiftedNumber('1', -1), shiftedNumber('A3', 1)]).toEqual([null, null]);
});
