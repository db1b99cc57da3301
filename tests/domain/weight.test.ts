import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  formatWeight,
  GRAMS_PER_DRAM,
  GRAMS_PER_OUNCE,
  GRAMS_PER_POUND,
  parseWeight,
} from '../../src/domain/weight.ts';

const grams = (text: string, unit: 'kg' | 'lb' = 'lb') => {
  const read = parseWeight(text, unit);
  return read.ok ? read.value : read.rule;
};

test.each([
  ['23-08', 23.5 * GRAMS_PER_POUND],
  ['23-8-0', 23.5 * GRAMS_PER_POUND],
  ['0-0-1', GRAMS_PER_DRAM],
  ['23 lb 8 oz', 23.5 * GRAMS_PER_POUND],
  ['23lb 8oz', 23.5 * GRAMS_PER_POUND],
  ['4 lbs', 4 * GRAMS_PER_POUND],
  ['8 oz', 8 * GRAMS_PER_OUNCE],
  ['40 oz', 40 * GRAMS_PER_OUNCE],
  ['1 oz 4 dr', 20 * GRAMS_PER_DRAM],
  ['10.66 kg', 10660],
  ['850 g', 850],
  ['850g', 850],
  ['0', 0],
])('reads %s', (text, expected) => {
  expect(grams(text)).toBeCloseTo(expected, 9);
});

test('gives a bare number the unit of the venue', () => {
  expect(grams('2.5', 'kg')).toBe(2500);
  expect(grams('2.5', 'lb')).toBeCloseTo(2.5 * GRAMS_PER_POUND, 9);
});

test.each([
  ['23-17', 'weight-ounces'],
  ['23 lb 16 oz', 'weight-ounces'],
  ['23-8-16', 'weight-drams'],
  ['23-Aug', 'weight-date'],
  ['Aug-23', 'weight-date'],
  ['2023-08-01', 'weight-date'],
  ['08/23/2026', 'weight-date'],
  ['10,66 kg', 'weight-number'],
  ['-2 kg', 'weight-negative'],
  ['1.5 lb 8 oz', 'weight-number'],
  ['lots', 'weight-number'],
  ['', 'weight-number'],
  ['12 stone', 'weight-number'],
])('refuses %s', (text, rule) => {
  expect(grams(text)).toBe(rule);
});

test('says what 17 ounces would come to', () => {
  expect(parseWeight('23-17', 'lb')).toEqual({
    ok: false,
    rule: 'weight-ounces',
    expected: 'ounces from 0 to 15 after the pounds',
    mend: '16 oz are a pound: 23-17 would be 24-01, if that is what was weighed.',
  });
});

test.each([
  [453.5, '1 lb 0 oz'],
  [10660, '23 lb 8 oz'],
  [227, '8 oz'],
  [0, '0 oz'],
])('shows %d g to the nearest ounce', (weight, expected) => {
  expect(formatWeight(weight, { weight: 'lb' })).toBe(expected);
});

test.each([
  [10660, '10.66 kg'],
  [45, '45 g'],
  [99.4, '99 g'],
  [99.6, '0.10 kg'],
])('shows %d g in kilograms', (weight, expected) => {
  expect(formatWeight(weight, { weight: 'kg' })).toBe(expected);
});

test('reads back what it shows, to the division it shows', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 500_000, noNaN: true }),
      fc.constantFrom('kg' as const, 'lb' as const),
      (weight, unit) => {
        const read = parseWeight(formatWeight(weight, { weight: unit }), unit);
        const division = unit === 'lb' ? GRAMS_PER_OUNCE : weight < 99.5 ? 1 : 10;
        expect(read.ok && Math.abs(read.value - weight)).toBeLessThanOrEqual(division / 2 + 1e-6);
      },
    ),
  );
});

test('reads every whole number of drams in both ways of writing it, the same', () => {
  fc.assert(
    fc.property(fc.nat(500), fc.nat(15), fc.nat(15), (pounds, ounces, drams) => {
      expect(parseWeight(`${pounds}-${ounces}-${drams}`, 'kg')).toEqual(
        parseWeight(`${pounds} lb ${ounces} oz ${drams} dr`, 'lb'),
      );
    }),
  );
});

test('never throws, whatever is written', () => {
  fc.assert(fc.property(fc.string({ unit: 'binary' }), (text) => void parseWeight(text, 'lb')));
});

test.each(['23lb8', '23/8', '23:8', '23 8', '23 lbs 08'])('%s is answered with pounds and ounces to write', (written) =>
  expect(parseWeight(written, 'lb')).toMatchObject({
    ok: false,
    mend: 'Write 23-08 if 23 lb 8 oz is what was weighed.',
  }),
);

test.each(['-', '–', '--', '.', '*'])('the mark %s is no weight below nought: its status is asked for', (written) =>
  expect(parseWeight(written, 'lb')).toMatchObject({
    ok: false,
    rule: 'weight-mark',
    mend: expect.stringContaining('dnw'),
  }),
);

test('two numbers that are no pounds and ounces are asked for their unit', () =>
  expect(parseWeight('23/17', 'lb')).toMatchObject({ ok: false, mend: 'Write the weight with its unit.' }));
