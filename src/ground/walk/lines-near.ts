import type { OverheadLine } from '../../domain/map.ts';
import type { LatLng } from '../../domain/place.ts';
import type { StandOffRule } from '../../domain/venue.ts';
import type { PlanePoint } from '../plane/plane-point.ts';
import { distanceBetweenSegments } from '../plane/segment-distance.ts';
import { standOffZoneMetres } from '../stand-off-zone.ts';

/** An overhead line as somebody who walks meets it: its mapped centre, and how near to it is below it. */
export interface LineToPass {
  readonly name: string;
  readonly line: readonly LatLng[];
  readonly withinMetres: number;
}

/** The lines of a venue with the stand-off of its rule. */
export function linesToPass(lines: readonly OverheadLine[], rule: StandOffRule): readonly LineToPass[] {
  return lines.map((overhead) => ({
    name: overhead.name,
    line: overhead.line,
    withinMetres: standOffZoneMetres(overhead, rule),
  }));
}

/** Finds the overhead lines, by number, that a straight piece of a way passes below or inside the stand-off. */
export function linesNear(
  lines: readonly LineToPass[],
  toPlane: (position: LatLng) => PlanePoint,
): (a: PlanePoint, b: PlanePoint) => readonly number[] {
  const drawn = lines.map(({ line, withinMetres }) => ({ points: line.map(toPlane), withinMetres }));
  return (a, b) =>
    drawn.flatMap(({ points, withinMetres }, i) => {
      const isNear = points.slice(1).some((p, k) => distanceBetweenSegments(a, b, points[k]!, p) < withinMetres);
      return isNear ? [i] : [];
    });
}
