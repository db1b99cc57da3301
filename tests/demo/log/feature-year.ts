/** A feature's year: its level, and its departure from it by month, January first, summing to zero. Log scale. */
export interface FeatureYear {
  readonly level: number;
  readonly months: readonly number[];
}

/**
 * The demo's true feature years, of the pattern anglers describe (common practice, no source): corners and margins
 * pay in warm months and fall off from late autumn, deep and open water the other way about, reeds in spring.
 */
export const FEATURE_YEARS: Readonly<Record<string, FeatureYear>> = {
  corner: { level: 0.05, months: [-0.45, -0.4, -0.15, 0.05, 0.25, 0.45, 0.5, 0.5, 0.3, -0.1, -0.45, -0.5] },
  margin: { level: 0.05, months: [-0.4, -0.35, -0.15, 0.05, 0.2, 0.4, 0.45, 0.45, 0.25, -0.05, -0.4, -0.45] },
  point: { level: 0.12, months: [0.05, 0.05, 0.05, 0.05, 0, -0.05, -0.05, -0.05, -0.05, 0, 0, 0] },
  bay: { level: -0.04, months: [-0.2, -0.1, 0.15, 0.25, 0.15, 0.05, 0, 0, -0.05, -0.05, -0.1, -0.1] },
  island: { level: 0.16, months: [-0.25, -0.2, -0.05, 0.1, 0.2, 0.25, 0.2, 0.2, 0.1, 0, -0.2, -0.35] },
  'open-water': { level: -0.05, months: [0.2, 0.15, 0.05, -0.05, -0.15, -0.15, -0.2, -0.15, -0.05, 0.05, 0.15, 0.15] },
  reeds: { level: 0.08, months: [-0.2, -0.1, 0.25, 0.4, 0.35, 0.1, -0.05, -0.1, -0.1, -0.1, -0.2, -0.25] },
  lilies: { level: 0.05, months: [-0.25, -0.2, -0.05, 0.1, 0.2, 0.25, 0.2, 0.15, 0.05, -0.05, -0.2, -0.2] },
  overhang: { level: 0.02, months: [0, 0, -0.05, 0, 0.05, 0.1, 0.1, 0.1, 0, -0.1, -0.1, -0.1] },
  inlet: { level: 0.05, months: [-0.1, -0.1, 0, 0.05, 0.05, 0.15, 0.2, 0.15, 0, -0.1, -0.15, -0.15] },
  aerator: { level: 0.02, months: [-0.05, -0.05, -0.05, -0.05, 0, 0.1, 0.2, 0.2, 0.05, -0.1, -0.15, -0.1] },
  'deep-water': { level: 0, months: [0.38, 0.33, 0.15, -0.02, -0.17, -0.3, -0.35, -0.32, -0.2, 0.02, 0.2, 0.28] },
  'near-shelf': { level: 0.04, months: [-0.05, -0.05, 0, 0.05, 0.05, 0.05, 0.05, 0, 0, 0, -0.05, -0.05] },
};
