import type { Spot } from './spot.ts';

/** The lodge's car park, where the paths of the three waters meet: near the origin of the drawing. */
export const LODGE_CAR_PARK: Spot = { x: -58, y: 22 };
