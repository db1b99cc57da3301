import { difference } from 'polyclip-ts';
import type { WaterMap } from '../domain/map.ts';
import type { LatLng } from '../domain/place.ts';
import { type LocalPlane, localPlane } from './geodesy/local-plane.ts';
import type { PlanePoint, PlaneRing } from './plane/plane-point.ts';
import { ringAreaSquareMetres, signedRingArea } from './plane/ring-area.ts';
import { ringSegments, type SegmentIndex, segmentIndex } from './plane/segment-index.ts';

/** One water laid out on a plane about its middle. */
export interface WaterPlane {
  readonly plane: LocalPlane;
  readonly outline: PlaneRing;
  readonly islands: readonly { readonly id: string; readonly name?: string; readonly ring: PlaneRing }[];
  /** The rings that part water from land: the outline less the islands. An island that touches the shore is part of it. */
  readonly shore: readonly PlaneRing[];
  readonly shoreIndex: SegmentIndex;
  readonly outlineIndex: SegmentIndex;
  /** In the order of `islands`. */
  readonly islandIndexes: readonly SegmentIndex[];
  readonly areaSquareMetres: number;
  readonly isWater: (p: PlanePoint) => boolean;
}

/** Lays a water's outline and islands out on a plane. */
export function waterPlane(map: Pick<WaterMap, 'outline' | 'islands'>): WaterPlane {
  const plane = localPlane(middleOf(map.outline));
  const outline = map.outline.map(plane.toPlane);
  const islands = map.islands.map(({ ring, ...island }) => ({ ...island, ring: ring.map(plane.toPlane) }));
  const rings = islands.map(({ ring }) => ring);
  const outlineIndex = segmentIndex(ringSegments([outline]));
  const islandIndexes = rings.map((ring) => segmentIndex(ringSegments([ring])));
  const shore = areApart(outlineIndex, rings, islandIndexes) ? [outline, ...rings] : cutOut(outline, rings);
  const shoreIndex = segmentIndex(ringSegments(shore));
  return {
    plane,
    outline,
    islands,
    shore,
    shoreIndex,
    outlineIndex,
    islandIndexes,
    areaSquareMetres: shore.reduce(
      (area, ring) => area + (holdsWater(ring, shoreIndex.isInside) ? 1 : -1) * ringAreaSquareMetres(ring),
      0,
    ),
    isWater: shoreIndex.isInside,
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
function areApart(outline: SegmentIndex, islands: readonly PlaneRing[], indexes: readonly SegmentIndex[]): boolean {
  const boxes = islands.map(boxOf);
  return islands.every((island, i) => {
    const others = indexes.filter((_, j) => j !== i && boxesMeet(boxes[i]!, boxes[j]!));
    return island.every((p, k) => {
      const next = island[(k + 1) % island.length]!;
      return (
        outline.isInside(p) &&
        outline.nearest(p)!.distanceMetres > TOUCHING_METRES &&
        outline.firstCrossing(p, next) === null &&
        others.every((other) => !other.isInside(p) && other.firstCrossing(p, next) === null)
      );
    });
  });
}

interface Box {
  readonly least: PlanePoint;
  readonly greatest: PlanePoint;
}

function boxOf(ring: PlaneRing): Box {
  // One by one: a shore of a hundred thousand points is too many arguments for one call.
  const least = { x: Number.POSITIVE_INFINITY, y: Number.POSITIVE_INFINITY };
  const greatest = { x: Number.NEGATIVE_INFINITY, y: Number.NEGATIVE_INFINITY };
  for (const { x, y } of ring) {
    least.x = Math.min(least.x, x);
    least.y = Math.min(least.y, y);
    greatest.x = Math.max(greatest.x, x);
    greatest.y = Math.max(greatest.y, y);
  }
  return { least, greatest };
}

function boxesMeet(a: Box, b: Box): boolean {
  return (
    a.least.x <= b.greatest.x && b.least.x <= a.greatest.x && a.least.y <= b.greatest.y && b.least.y <= a.greatest.y
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

/** Whether the water lies inside a ring of the shore, as it does in an outline and not in an island. */
export function holdsWater(ring: PlaneRing, isWater: (p: PlanePoint) => boolean): boolean {
  const a = ring[0]!;
  const b = ring[1]!;
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  // A step to the left of the middle of the first stretch.
  const left = {
    x: (a.x + b.x) / 2 - ((b.y - a.y) / length) * TOUCHING_METRES,
    y: (a.y + b.y) / 2 + ((b.x - a.x) / length) * TOUCHING_METRES,
  };
  return isWater(left) === signedRingArea(ring) > 0;
}
