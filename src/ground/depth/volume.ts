import { side } from '../plane/segment-distance.ts';
import type { Triangulation } from './triangulation.ts';

/** What lies under the triangles that count. */
export interface Volume {
  readonly areaSquareMetres: number;
  readonly volumeCubicMetres: number;
}

/** Area and the integral of the values over the triangles that count: exact, for a plane over a triangle has its mean at the corners' mean. */
export function volumeOf(
  { points, corners }: Triangulation,
  values: Float64Array,
  counts: (triangle: number) => boolean,
): Volume {
  let areaSquareMetres = 0;
  let volumeCubicMetres = 0;
  for (let e = 0; e < corners.length; e += 3) {
    if (!counts(e / 3)) continue;
    const [i, j, k] = [corners[e]!, corners[e + 1]!, corners[e + 2]!];
    const area = Math.abs(side(points[i]!, points[j]!, points[k]!)) / 2;
    areaSquareMetres += area;
    volumeCubicMetres += (area * (values[i]! + values[j]! + values[k]!)) / 3;
  }
  return { areaSquareMetres, volumeCubicMetres };
}
