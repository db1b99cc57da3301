import { expect, test } from 'vitest';
import { SHIPPED_THRESHOLDS, withShippedThresholds } from '../../src/domain/shipped-thresholds.ts';
import type { Threshold } from '../../src/domain/venue.ts';

test('ships every figure once, with where it comes from', () => {
  const ids = SHIPPED_THRESHOLDS.map(({ id }) => id);
  expect(new Set(ids).size).toBe(ids.length);
  for (const { source, unit } of SHIPPED_THRESHOLDS) expect(source.length * unit.length).toBeGreaterThan(10);
});

test('lets a venue replace a figure and add its own', () => {
  const own: Threshold[] = [
    { id: 'cold-water', value: 12, unit: 'C', source: 'our committee', basis: 'club' },
    { id: 'peg-spacing', value: 13.7, unit: 'm', source: 'our rules', basis: 'club' },
  ];
  const all = withShippedThresholds(own);
  expect(all).toHaveLength(SHIPPED_THRESHOLDS.length + 1);
  expect(all.find(({ id }) => id === 'cold-water')?.value).toBe(12);
  expect(all.at(-1)?.id).toBe('peg-spacing');
  expect(withShippedThresholds([])).toEqual(SHIPPED_THRESHOLDS);
});
