import { describe, expect, it } from 'vitest';
import { monthSpan, nestingWait } from '../../src/domain/nesting.ts';
import { SHIPPED_NESTING_MONTHS } from '../../src/domain/shipped-settings.ts';

describe('a day in the nesting months', () => {
  it('is moved to the last day before them or the first after', () => {
    expect(nestingWait('2027-05-10', SHIPPED_NESTING_MONTHS)).toEqual({ before: '2027-02-28', from: '2027-09-01' });
    expect(nestingWait('2028-03-01', SHIPPED_NESTING_MONTHS)).toEqual({ before: '2028-02-29', from: '2028-09-01' });
  });

  it('needs no wait outside them', () => {
    expect(nestingWait('2027-02-28', SHIPPED_NESTING_MONTHS)).toBeNull();
    expect(nestingWait('2027-09-01', SHIPPED_NESTING_MONTHS)).toBeNull();
  });

  it('has nowhere to go where the club names every month', () => {
    expect(nestingWait('2027-05-10', [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12])).toBeNull();
  });

  it('goes over the new year', () => {
    expect(nestingWait('2027-01-10', [11, 12, 1])).toEqual({ before: '2026-10-31', from: '2027-02-01' });
  });
});

describe('months in words', () => {
  it('are a span where they follow each other, over the new year too, else a list', () => {
    expect(monthSpan([3, 4, 5, 6, 7, 8])).toBe('March to August');
    expect(monthSpan([11, 12, 1])).toBe('November to January');
    expect(monthSpan([3, 5])).toBe('March, May');
    expect(monthSpan([])).toBe('no month');
  });
});
