import type { OverheadLine } from '../../domain/map.ts';
import type { LatLng } from '../../domain/place.ts';
import type { StandOffRule } from '../../domain/venue.ts';
import type { PlanePoint } from '../plane/plane-point.ts';
import { distanceBetweenSegments } from '../plane/segment-distance.ts';
import { standOffZoneMetres } from '../stand-off-zone.ts';

/** Finds the overhead lines, by number, that a straight piece of a way passes below or inside the stand-off. */
export function linesNear(
  lines: readonly OverheadLine[],
  rule: StandOffRule,
  toPlane: (position: LatLng) => PlanePoint,
): (a: PlanePoint, b: PlanePoint) => readonly number[] {
  const drawn = lines.map((overhead) => ({
    points: overhead.line.map(toPlane),
    withinMetres: standOffZoneMetres(overhead, rule),
  }));
  return (a, b) =>
    drawn.flatMap(({ points, withinMetres }, i) => {
      const isNear = points.slice(1).some((p, k) => distanceBetweenSegments(a, b, points[k]!, p) < withinMetres);
      return isNear ? [i] : [];
    });
}
