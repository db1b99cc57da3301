import type { Fault, LeftOut } from './fault.ts';

/** What a reader found, and what was wrong with it. */
export interface Reading<T> {
  readonly value: T;
  readonly faults: readonly Fault[];
  readonly leftOut: readonly LeftOut[];
}

/** A reading of nothing but what was read. */
export function reading<T>(value: T, faults: readonly Fault[] = [], leftOut: readonly LeftOut[] = []): Reading<T> {
  return { value, faults, leftOut };
}
