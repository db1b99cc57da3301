import { difference } from 'polyclip-ts';
import type { WaterMap } from '../domain/map.ts';
import type { LatLng } from '../domain/place.ts';
import { type LocalPlane, localPlane } from './geodesy/local-plane.ts';
import type { PlanePoint, PlaneRing } from './plane/plane-point.ts';
import { ringAreaSquareMetres } from './plane/ring-area.ts';
import { ringSegments, type SegmentGrid, segmentGrid } from './plane/segment-grid.ts';

/** One water laid out on a plane about its middle. */
export interface WaterPlane {
  readonly plane: LocalPlane;
  readonly outline: PlaneRing;
  readonly islands: readonly { readonly id: string; readonly name?: string; readonly ring: PlaneRing }[];
  /** The rings that part water from land: the outline less the islands. An island that touches the shore is part of it. */
  readonly shore: readonly PlaneRing[];
  readonly shoreGrid: SegmentGrid;
  readonly outlineGrid: SegmentGrid;
  /** In the order of `islands`. */
  readonly islandGrids: readonly SegmentGrid[];
  readonly areaSquareMetres: number;
  readonly isWater: (p: PlanePoint) => boolean;
}

/** Lays a water's outline and islands out on a plane. */
export function waterPlane(map: Pick<WaterMap, 'outline' | 'islands'>): WaterPlane {
  const plane = localPlane(middleOf(map.outline));
  const outline = map.outline.map(plane.toPlane);
  const islands = map.islands.map(({ ring, ...island }) => ({ ...island, ring: ring.map(plane.toPlane) }));
  const rings = islands.map(({ ring }) => ring);
  const outlineGrid = segmentGrid(ringSegments([outline]));
  const islandGrids = rings.map((ring) => segmentGrid(ringSegments([ring])));
  const shore = areApart(outlineGrid, rings, islandGrids) ? [outline, ...rings] : cutOut(outline, rings);
  const shoreGrid = segmentGrid(ringSegments(shore));
  return {
    plane,
    outline,
    islands,
    shore,
    shoreGrid,
    outlineGrid,
    islandGrids,
    areaSquareMetres: waterArea(shore),
    isWater: shoreGrid.isInside,
  };
}

/** The middle of the box around positions, whichever side of the date line they lie. */
function middleOf(positions: readonly LatLng[]): LatLng {
  const first = positions[0];
  if (first === undefined) throw new RangeError('waterPlane: the outline has no position, expected at least three');
  const lats = positions.map(({ lat }) => lat);
  const turns = positions.map(({ lng }) => ((lng - first.lng + 540) % 360) - 180);
  const middle = (values: readonly number[]) => {
    const [least, most] = values.reduce(
      ([a, b], value) => [Math.min(a, value), Math.max(b, value)],
      [Infinity, -Infinity],
    );
    return (least! + most!) / 2;
  };
  return { lat: middle(lats), lng: ((first.lng + middle(turns) + 540) % 360) - 180 };
}

/** Whether every island lies by itself inside the outline, as drawn on nearly every map. */
function areApart(outline: SegmentGrid, islands: readonly PlaneRing[], grids: readonly SegmentGrid[]): boolean {
  return islands.every((island, i) =>
    island.every((p, k) => {
      const next = island[(k + 1) % island.length]!;
      const others = grids.filter((_, j) => j !== i);
      return (
        outline.isInside(p) &&
        outline.nearest(p)!.distanceMetres > TOUCHING_METRES &&
        outline.firstCrossing(p, next) === null &&
        others.every((other) => !other.isInside(p) && other.firstCrossing(p, next) === null)
      );
    }),
  );
}

const TOUCHING_METRES = 0.01;

/** The outline with islands that touch it or one another cut out of it. */
function cutOut(outline: PlaneRing, islands: readonly PlaneRing[]): PlaneRing[] {
  const polygon = (ring: PlaneRing): [number, number][][] => [ring.map(({ x, y }) => [x, y])];
  return difference(polygon(outline), ...islands.map(polygon)).flatMap((part) =>
    part.map((ring) => ring.slice(0, -1).map(([x, y]) => ({ x: x!, y: y! }))),
  );
}

/** Area of rings none of which cross: those inside an odd number of others are land. */
function waterArea(rings: readonly PlaneRing[]): number {
  return rings.reduce((area, ring, i) => {
    const inside = rings.filter((other, j) => j !== i && segmentGrid(ringSegments([other])).isInside(ring[0]!)).length;
    return area + (inside % 2 === 0 ? 1 : -1) * ringAreaSquareMetres(ring);
  }, 0);
}
