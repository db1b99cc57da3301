import type { OverheadLine } from '../domain/map.ts';
import type { Ring } from '../domain/place.ts';
import type { StandOffRule } from '../domain/venue.ts';
import { localPlane } from './geodesy/local-plane.ts';
import { lineAllowanceMetres } from './line-allowance.ts';
import { bufferPolyline } from './plane/buffer-polyline.ts';

/** How far the zone reaches from the mapped centre line: the stand-off, half the conductor spread and the map error. */
export function standOffZoneMetres(line: OverheadLine, rule: StandOffRule): number {
  return rule.metres + lineAllowanceMetres(line, rule);
}

/**
 * The ground on which nobody may fish because of an overhead line, for drawing: polygons of an outer ring and its
 * holes. Verdicts on pegs never come from here but from distances (stand-off.ts).
 */
export function standOffZone(line: OverheadLine, rule: StandOffRule): readonly (readonly Ring[])[] {
  const middle = line.line[Math.floor(line.line.length / 2)];
  if (middle === undefined) return [];
  const plane = localPlane(middle);
  return bufferPolyline(line.line.map(plane.toPlane), standOffZoneMetres(line, rule)).map((polygon) =>
    polygon.map((ring) => ring.map(plane.toPosition)),
  );
}
