/** One node of a rule over the standard normal density. */
export interface HermiteNode {
  readonly node: number;
  readonly weight: number;
}

/** How far out the outer nodes of the 3-point rule lie, in standard deviations, and what each of them weighs. */
export const OUTER_NODE = Math.sqrt(3);
export const OUTER_WEIGHT = 1 / 6;

/** The 3-point Gauss–Hermite rule: exact for the moments of a standard normal up to the fifth. */
export const HERMITE_RULE: readonly HermiteNode[] = [
  { node: -OUTER_NODE, weight: OUTER_WEIGHT },
  { node: 0, weight: 1 - 2 * OUTER_WEIGHT },
  { node: OUTER_NODE, weight: OUTER_WEIGHT },
];
