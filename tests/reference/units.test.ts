import { expect, test } from 'vitest';
import { parseLength, toFeetInches } from '../../src/domain/length.ts';
import type { Parsed } from '../../src/domain/parsed.ts';
import { parseWeight, toPoundsOunces, toPoundsOuncesDrams } from '../../src/domain/weight.ts';
import units from './data/units.json' with { type: 'json' };

// Source: international yard and pound agreement, 1959, and the UK Units of Measurement Regulations 1995:
// 1 lb = 0.45359237 kg and 1 ft = 0.3048 m exactly, 16 dr = 1 oz, 16 oz = 1 lb. Expected values in data/units.json were
// made with exact rational arithmetic; tolerance for kg and m 2e-15 of the value, rounded figures exact.
const { to_kg, to_m, from_kg_to_nearest_ounce, from_kg_to_nearest_dram, carry_cases, from_m_to_nearest_inch } =
  units.data_and_expected;
const RELATIVE_TOLERANCE = 2e-15;

function value(parsed: Parsed<number>): number {
  if (!parsed.ok) throw new Error(parsed.expected);
  return parsed.value;
}

function expectNear(actual: number, expected: number): void {
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(RELATIVE_TOLERANCE * expected);
}

test.each(to_kg)('reads $lb lb $oz oz $dr dr as $kg_exact kg', ({ lb, oz, dr, kg_exact }) => {
  for (const written of [`${lb}-${oz}-${dr}`, `${lb} lb ${oz} oz ${dr} dr`]) {
    expectNear(value(parseWeight(written, 'kg')) / 1000, Number(kg_exact));
  }
});

test.each(to_m)('reads $ft ft $in in as $m_exact m', ({ ft, in: inches, m_exact }) => {
  expectNear(value(parseLength(`${ft} ft ${inches} in`, 'm')), Number(m_exact));
});

test.each([...from_kg_to_nearest_ounce, ...carry_cases])('shows $kg kg as $lb lb $oz oz', ({ kg, lb, oz }) => {
  expect(toPoundsOunces(Number(kg) * 1000)).toEqual({ pounds: lb, ounces: oz });
});

test.each(from_kg_to_nearest_dram)('shows $kg kg as $lb lb $oz oz $dr dr', ({ kg, lb, oz, dr }) => {
  expect(toPoundsOuncesDrams(Number(kg) * 1000)).toEqual({ pounds: lb, ounces: oz, drams: dr });
});

test.each(from_m_to_nearest_inch)('shows $m m as $ft ft $in in', ({ m, ft, in: inches }) => {
  expect(toFeetInches(Number(m))).toEqual({ feet: ft, inches });
});

test('holds every case of the source', () => {
  expect([to_kg.length, to_m.length, from_kg_to_nearest_ounce.length, from_m_to_nearest_inch.length]).toEqual([
    13, 10, 10, 8,
  ]);
});
