import { describe, expect, it } from 'vitest';
import { checkOf, checkState, daysOverdue } from '../../src/domain/due.ts';

describe('a dated check', () => {
  const check = checkOf('2026-10-01', '2025-01-01', 28);

  it('is fresh up to and on the day it falls due, out of date the day after', () => {
    expect(check.dueOn).toBe('2026-10-29');
    expect(checkState(check, '2026-10-29')).toBe('fresh');
    expect(checkState(check, '2026-10-30')).toBe('out-of-date');
    expect(daysOverdue(check, '2026-11-08')).toBe(10);
  });

  it('counts the day of finding as a look', () => {
    expect(checkOf(undefined, '2026-10-01', 28).dueOn).toBe('2026-10-29');
  });

  it('is not known, never safe, where nobody recorded one', () => {
    const never = checkOf(undefined, undefined, 28);
    expect(checkState(never, '2026-10-30')).toBe('unknown');
    expect(daysOverdue(never, '2026-10-30')).toBe(Number.POSITIVE_INFINITY);
  });
});
