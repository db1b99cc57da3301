import type { PlanePoint } from '../plane/plane-point.ts';
import { ringSegments, type SegmentIndex, segmentIndex } from '../plane/segment-index.ts';
import type { WaterPlane } from '../water-plane.ts';
import { ON_THE_EDGE_METRES } from './datum-soundings.ts';
import { isobathLevels } from './isobath-levels.ts';
import { isobathLines } from './isobath-lines.ts';
import { type DepthPoint, dryShore, shoreTriangulation } from './shore-triangulation.ts';
import { triangleAt, valueInTriangle } from './triangulation.ts';
import { volumeOf } from './volume.ts';

/** Farther than this from every sounding, a depth is not given: it is not plumbed. A choice of the project. */
export const NOT_PLUMBED_BEYOND_METRES = 10;

/** A depth that was measured at a point of the plane. */
export interface MeasuredDepth extends PlanePoint {
  readonly depthMetres: number;
}

/** The depth at a point, null where it is not plumbed. */
export interface DepthThere {
  readonly depthMetres: number | null;
  readonly nearestSoundingMetres: number;
}

/** The bed of a water. Depths are below datum. */
export interface DepthSurface {
  readonly meanMetres: number;
  readonly maximumMetres: number;
  readonly volumeCubicMetres: number;
  readonly areaSquareMetres: number;
  readonly plumbedShare: number;
  readonly isobaths: readonly { readonly depthMetres: number; readonly lines: readonly (readonly PlanePoint[])[] }[];
  /** The depth at a point of the water; what lies on land is not asked here. */
  readonly depthAt: (p: PlanePoint) => DepthThere;
}

/**
 * Lays a bed through measured depths by triangles, with the shore as depth 0. A depth measured within 0.3 m of the shore
 * makes the shore itself that deep there: so a dug margin stands as the record gives it. Volume and mean are of the whole
 * surface; isobaths and depths are given only where it is plumbed, which is on a triangle with at least one measured
 * corner and within 10 m of a sounding. Margin depths of records shape the bed but are no soundings: what lies 9 m out
 * from one is not plumbed by it. Null where there is no sounding.
 */
export function depthSurface(
  water: WaterPlane,
  soundings: readonly MeasuredDepth[],
  marginDepths: readonly MeasuredDepth[] = [],
): DepthSurface | null {
  if (soundings.length === 0) return null;
  const measured = [...soundings, ...marginDepths];
  const { shore, inWater } = withEdgeDepths(water, measured);
  const { triangulation, depths, measured: isMeasured } = shoreTriangulation(shore, inWater);
  const nearest = segmentIndex(soundings.map((p) => [p, p]));
  const { corners, points } = triangulation;
  const triangles = corners.length / 3;
  const isWet = new Uint8Array(triangles);
  const isPlumbed = new Uint8Array(triangles);
  for (let t = 0; t < triangles; t++) {
    const [i, j, k] = [corners[3 * t]!, corners[3 * t + 1]!, corners[3 * t + 2]!];
    const middle = middleOf(points[i]!, points[j]!, points[k]!);
    if (!water.isWater(middle)) continue;
    isWet[t] = 1;
    const hasMeasured = isMeasured[i]! + isMeasured[j]! + isMeasured[k]! > 0;
    if (hasMeasured && isNearSounding(nearest, middle)) isPlumbed[t] = 1;
  }
  const wet = volumeOf(triangulation, depths, (t) => isWet[t] === 1);
  const plumbed = volumeOf(triangulation, depths, (t) => isPlumbed[t] === 1);
  const maximumMetres = measured.reduce((most, { depthMetres }) => Math.max(most, depthMetres), 0);

  let last = 0;
  return {
    areaSquareMetres: wet.areaSquareMetres,
    volumeCubicMetres: wet.volumeCubicMetres,
    meanMetres: wet.volumeCubicMetres / wet.areaSquareMetres,
    maximumMetres,
    plumbedShare: plumbed.areaSquareMetres / wet.areaSquareMetres,
    isobaths: isobathLevels(maximumMetres).map((depthMetres) => ({
      depthMetres,
      lines: isobathLines(triangulation, depths, (t) => isPlumbed[t] === 1, depthMetres),
    })),
    depthAt: (p) => {
      const nearestSoundingMetres = nearest.nearest(p)!.distanceMetres;
      const triangle = triangleAt(triangulation, p, last);
      last = triangle ?? last;
      const known =
        triangle !== null &&
        nearestSoundingMetres <= NOT_PLUMBED_BEYOND_METRES &&
        [0, 1, 2].some((corner) => isMeasured[corners[3 * triangle + corner]!] === 1);
      return {
        depthMetres: known ? valueInTriangle(triangulation, depths, triangle, p) : null,
        nearestSoundingMetres,
      };
    },
  };
}

function isNearSounding(soundings: SegmentIndex, p: PlanePoint): boolean {
  return soundings.nearest(p)!.distanceMetres <= NOT_PLUMBED_BEYOND_METRES;
}

function middleOf(a: PlanePoint, b: PlanePoint, c: PlanePoint): PlanePoint {
  return { x: (a.x + b.x + c.x) / 3, y: (a.y + b.y + c.y) / 3 };
}

/** Moves what was measured at the water's edge onto the shore, and leaves the rest in the water. */
function withEdgeDepths(water: WaterPlane, measured: readonly MeasuredDepth[]) {
  const dry = dryShore(water.shore);
  const stretches = segmentIndex(ringSegments(dry));
  const inWater: DepthPoint[] = [];
  const onStretch = new Map<number, { readonly share: number; readonly point: DepthPoint }[]>();
  for (const { x, y, depthMetres } of apart(measured)) {
    const foot = stretches.nearest({ x, y })!;
    if (foot.distanceMetres > ON_THE_EDGE_METRES) {
      inWater.push({ x, y, depthMetres, measured: true });
      continue;
    }
    const there = onStretch.get(foot.segment) ?? [];
    there.push({ share: foot.share, point: { x: foot.x, y: foot.y, depthMetres, measured: true } });
    onStretch.set(foot.segment, there);
  }
  let stretch = 0;
  const shore = dry.map((ring) => {
    const points = ring.flatMap((start) => {
      const there = onStretch.get(stretch++) ?? [];
      return [start, ...there.sort((a, b) => a.share - b.share).map(({ point }) => point)];
    });
    return withoutTwins(points);
  });
  return { shore, inWater };
}

const TWINS_WITHIN_METRES = 0.02;

/** Measured depths without those that fall on another's place: the first given stays. */
function apart(measured: readonly MeasuredDepth[]): readonly MeasuredDepth[] {
  const places = new Set<string>();
  return measured.filter(({ x, y }) => {
    const place = `${Math.round(x / TWINS_WITHIN_METRES)} ${Math.round(y / TWINS_WITHIN_METRES)}`;
    return !places.has(place) && places.add(place);
  });
}

/** A ring without points that all but coincide: a corner keeps its place and takes the depth measured beside it. */
function withoutTwins(ring: readonly DepthPoint[]): DepthPoint[] {
  const kept: DepthPoint[] = [];
  for (const point of ring) {
    const last = kept[kept.length - 1];
    if (last !== undefined && areTwins(point, last)) kept[kept.length - 1] = merged(last, point);
    else kept.push(point);
  }
  const [first, last] = [kept[0]!, kept[kept.length - 1]!];
  if (kept.length <= 3 || !areTwins(first, last)) return kept;
  return [merged(first, last), ...kept.slice(1, -1)];
}

function areTwins(a: PlanePoint, b: PlanePoint): boolean {
  return Math.hypot(a.x - b.x, a.y - b.y) <= TWINS_WITHIN_METRES;
}

function merged(a: DepthPoint, b: DepthPoint): DepthPoint {
  const [corner, other] = a.measured ? [b, a] : [a, b];
  return other.measured ? { ...corner, depthMetres: other.depthMetres, measured: true } : corner;
}
