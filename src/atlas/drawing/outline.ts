import { mapPath } from './map-path.ts';
import { simplifyRing } from './map-svg.ts';
import type { Point } from './simplify-line.ts';

/** The bare shape of a water, in user units. */
export interface OutlineDrawing {
  readonly width: number;
  readonly height: number;
  readonly rings: readonly (readonly Point[])[];
}

/** A water as a small silhouette, islands left open; hidden from screen readers, since its name stands beside it. */
export function outlineSvg({ width, height, rings }: OutlineDrawing): string {
  const d = rings.map((ring) => mapPath(simplifyRing(ring, 2), true)).join('');
  return `<svg class="outline" viewBox="0 0 ${width} ${height}" aria-hidden="true"><path class="m-water" d="${d}"/></svg>`;
}
