import { expect, test } from 'vitest';
import type { Fault } from '../../src/content/fault.ts';
import { formatFault, formatFaults, formatLeftOut } from '../../src/content/format-fault.ts';

const FAULT: Fault = {
  file: 'pegs/top-water/12.md',
  line: 7,
  column: 13,
  field: 'margin-depth',
  rule: 'length-number',
  found: '"deep"',
  expected: 'a length such as 1.4 m',
  mend: 'Write the length with its unit.',
  severity: 'error',
};

test('says where, what was found, what was expected and what to do', () => {
  expect(formatFault(FAULT)).toBe(
    'pegs/top-water/12.md:7:13 error Unexpected "deep" for margin-depth, expected a length such as 1.4 m. Write the length with its unit. (length-number)',
  );
});

test('says of things that are missing that they were not found', () => {
  expect(formatFault({ ...FAULT, found: 'nothing' })).toContain('error Found nothing for margin-depth, expected');
  expect(formatFault({ ...FAULT, found: 'no such file', field: '' })).toContain('error Found no such file, expected');
  expect(formatFault({ ...FAULT, found: 'a place in the water' })).toContain(
    'error Unexpected place in the water, expected',
  );
});

test('tells five of a kind and counts the rest', () => {
  const many = Array.from({ length: 12 }, (_, i) => ({ ...FAULT, line: i + 1 }));
  const lines = formatFaults([...many, { ...FAULT, rule: 'other', severity: 'warning' }]);
  expect(lines).toHaveLength(8);
  expect(lines[5]).toBe('pegs/top-water/12.md … and 7 more like it (length-number)');
  expect(lines.at(-1)).toBe('12 errors and 1 warning.');
});

test('says nothing where there is nothing to say', () => {
  expect(formatFaults([])).toEqual([]);
  expect(formatLeftOut([])).toEqual([]);
});

test('lists what was left out, and why', () => {
  const left = [{ file: 'gauge/pit.csv', line: 4, what: '3 empty rows', why: 'There is nothing in it.' }];
  expect(formatLeftOut(left)).toEqual([
    'gauge/pit.csv:4 left out: 3 empty rows. There is nothing in it.',
    '1 thing left out.',
  ]);
});
