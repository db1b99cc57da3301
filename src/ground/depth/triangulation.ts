import Delaunator from 'delaunator';
import type { PlanePoint } from '../plane/plane-point.ts';
import { side } from '../plane/segment-distance.ts';

/** A Delaunay triangulation of points. Half-edge `e` starts at point `corners[e]` and belongs to triangle `e / 3`. */
export interface Triangulation {
  readonly points: readonly PlanePoint[];
  readonly corners: Uint32Array;
  /** The half-edge on the other side, −1 on the rim. */
  readonly twins: Int32Array;
}

/** Triangulates points; those that coincide with another get no triangle of their own. */
export function triangulated(points: readonly PlanePoint[]): Triangulation {
  const coordinates = new Float64Array(points.length * 2);
  points.forEach(({ x, y }, i) => {
    coordinates[2 * i] = x;
    coordinates[2 * i + 1] = y;
  });
  const { triangles, halfedges } = new Delaunator(coordinates);
  return { points, corners: Uint32Array.from(triangles), twins: Int32Array.from(halfedges) };
}

/** The half-edge after `e` around its triangle. */
export function nextAround(e: number): number {
  return e % 3 === 2 ? e - 2 : e + 1;
}

/**
 * The triangle that holds a point, walked to from another one; null outside all triangles. In a Delaunay triangulation
 * the walk towards the point never goes round in circles (Devillers, Pion and Teillaud, 2002).
 */
export function triangleAt(triangulation: Triangulation, p: PlanePoint, from = 0): number | null {
  const { points, corners, twins } = triangulation;
  let triangle = from;
  for (let step = 0; step <= corners.length; step++) {
    let crossed = -1;
    for (let e = 3 * triangle; e < 3 * triangle + 3; e++) {
      const a = points[corners[e]!]!;
      const b = points[corners[nextAround(e)]!]!;
      const third = points[corners[nextAround(nextAround(e))]!]!;
      if (side(a, b, p) * Math.sign(side(a, b, third)) < 0) {
        crossed = e;
        break;
      }
    }
    if (crossed === -1) return triangle;
    const twin = twins[crossed]!;
    if (twin === -1) return null;
    triangle = Math.floor(twin / 3);
  }
  return null;
}

/** The value at a point of a triangle, from the values at its three corners by the plane through them. */
export function valueInTriangle(
  { points, corners }: Triangulation,
  values: Float64Array,
  triangle: number,
  p: PlanePoint,
): number {
  const [i, j, k] = [corners[3 * triangle]!, corners[3 * triangle + 1]!, corners[3 * triangle + 2]!];
  const [a, b, c] = [points[i]!, points[j]!, points[k]!];
  const whole = side(a, b, c);
  if (whole === 0) return values[i]!;
  return (side(b, c, p) * values[i]! + side(c, a, p) * values[j]! + side(a, b, p) * values[k]!) / whole;
}
