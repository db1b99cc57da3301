import type { AxisWorth } from '../../../src/atlas/drawing/worth-axis.ts';

const EVIDENCE = ['thin', 'thin', 'fair', 'fair', 'solid', 'solid', 'solid', 'solid', 'solid', 'fair', 'fair', 'thin'];
const WORTHS = [0.74, 0.72, 0.8, 0.98, 1.12, 1.28, 1.36, 1.41, 1.22, 1, 0.82, 0.76];

/** A made-up year: January leaves the scale at both ends, February is not known. */
export const EXAMPLE_YEAR: readonly (AxisWorth | null)[] = WORTHS.map((value, index) => {
  if (index === 1) return null;
  const spread = index === 0 ? 3.2 : 1.25;
  return { value, low: value / spread, high: value * spread, evidence: EVIDENCE[index] as AxisWorth['evidence'] };
});
