import { type WaterPlane, waterPlane } from '../../ground/water-plane.ts';
import type { Content } from '../content.ts';
import { ringFaults } from './map-shapes.ts';

/** Every water whose map is sound, laid out in metres. Checks of distances leave the others out: their shapes come first. */
export type WaterGrounds = ReadonlyMap<string, WaterPlane>;

/** Lays out the waters whose outline and islands cross nothing. */
export function waterGrounds({ waters }: Content): WaterGrounds {
  const grounds = new Map<string, WaterPlane>();
  for (const { id, map } of waters) {
    if (map === null || ringFaults(map).length > 0) continue;
    try {
      grounds.set(id, waterPlane(map.map));
    } catch {
      // Islands that touch in ways the clipping cannot settle: the shapes have been looked at, distances are not.
    }
  }
  return grounds;
}
