import fc from 'fast-check';
import { expect, test } from 'vitest';
import { formatLength, parseLength, parseSignedLength } from '../../src/domain/length.ts';

const metres = (text: string, unit: 'm' | 'ft' = 'm') => {
  const read = parseLength(text, unit);
  return read.ok ? read.value : read.rule;
};

test.each([
  ['1.4 m', 1.4],
  ['45 cm', 0.45],
  ['350mm', 0.35],
  ['4 ft 6 in', 1.3716],
  [`4' 6"`, 1.3716],
  ['4ft', 1.2192],
  ['54 in', 1.3716],
  ['4 ft 6.5 in', 1.3843],
  ['12 yd', 10.9728],
  ['.5', 0.5],
])('reads %s', (text, expected) => {
  expect(metres(text)).toBe(expected);
});

test('gives a bare number the unit of the venue', () => {
  expect(metres('4.5', 'ft')).toBeCloseTo(1.3716, 12);
  expect(metres('4.5', 'm')).toBe(4.5);
});

test.each([
  ['4 ft 12 in', 'length-inches'],
  ['1,4 m', 'length-number'],
  ['-1 m', 'length-negative'],
  ['4.5 ft 6 in', 'length-number'],
  ['deep', 'length-number'],
  ['', 'length-number'],
  ['1 m 40', 'length-number'],
])('refuses %s', (text, rule) => {
  expect(metres(text)).toBe(rule);
});

test('reads a level below its datum with either minus sign', () => {
  expect(parseSignedLength('-0.2 m', 'm')).toEqual({ ok: true, value: -0.2 });
  expect(parseSignedLength('−5 cm', 'm')).toEqual({ ok: true, value: -0.05 });
  expect(parseSignedLength('-0', 'm')).toEqual({ ok: true, value: 0 });
});

test.each([
  [1.8287, 'ft', '6 ft'],
  [1.3716, 'ft', '4 ft 6 in'],
  [0.1, 'ft', '4 in'],
  [1.4, 'm', '1.40 m'],
  [17, 'm', '17.0 m'],
  [9.996, 'm', '10.0 m'],
  [-0.05, 'm', '−0.05 m'],
  [-0.001, 'm', '0.00 m'],
] as const)('shows %d m in %s', (length, unit, expected) => {
  expect(formatLength(length, { length: unit })).toBe(expected);
});

test('reads back what it shows, to the division it shows', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -50, max: 300, noNaN: true }),
      fc.constantFrom('m' as const, 'ft' as const),
      (length, unit) => {
        const read = parseSignedLength(formatLength(length, { length: unit }), unit);
        const division = unit === 'ft' ? 0.0254 : Math.abs(length) < 9.995 ? 0.01 : 0.1;
        expect(read.ok && Math.abs(read.value - length)).toBeLessThanOrEqual(division / 2 + 1e-9);
      },
    ),
  );
});

test('never throws, whatever is written', () => {
  fc.assert(fc.property(fc.string({ unit: 'binary' }), (text) => void parseSignedLength(text, 'ft')));
});
