import { METRES_PER_INCH } from './length.ts';

/** Over depth for light natural baits: about 3 in (common practice, no source). */
export const OVER_DEPTH_METRES = 3 * METRES_PER_INCH;

/** Where the float stops above the hook, at a depth. */
export interface FloatSettings {
  /** Light natural baits: a little over depth, so that the rig is steady. */
  readonly lightMetres: number;
  /** Heavier hook baits: dead depth. */
  readonly heavyMetres: number;
}

/** The usual float settings at a depth (common practice, no source). */
export function floatSettings(depthMetres: number): FloatSettings {
  return { lightMetres: depthMetres + OVER_DEPTH_METRES, heavyMetres: depthMetres };
}
