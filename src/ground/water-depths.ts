import type { Water } from '../domain/map.ts';
import { type Peg, type PegKey, pegKey } from '../domain/peg.ts';
import type { Venue } from '../domain/venue.ts';
import { type DatumSoundings, datumSoundings } from './depth/datum-soundings.ts';
import { type DepthSurface, depthSurface, type MeasuredDepth } from './depth/depth-surface.ts';
import { type LevelReading, levelReadings } from './depth/level-on-day.ts';
import { MARGIN_OUT_METRES } from './line-depths.ts';
import { type PegStand, pegStand, pointAhead } from './peg-stand.ts';
import { effectiveReach } from './swept-area.ts';
import { type WaterPlane, waterPlane } from './water-plane.ts';

/** A water laid out with its pegs and its bed. */
export interface WaterDepths {
  readonly plane: WaterPlane;
  readonly stands: ReadonlyMap<PegKey, PegStand>;
  readonly levels: readonly LevelReading[];
  readonly soundings: DatumSoundings;
  /** Null where the water is not plumbed. */
  readonly surface: DepthSurface | null;
}

/** Lays out a water of a checked venue and makes its bed of the soundings. */
export function waterDepths(water: Water, venue: Venue): WaterDepths {
  const plane = waterPlane(water.map);
  const pegs = venue.pegs.filter((peg) => peg.water === water.id);
  const { permittedReach } = venue.settings;
  const stands = new Map(
    pegs.map((peg) => [pegKey(peg.water, peg.peg), pegStand(peg, plane, effectiveReach(peg, permittedReach))] as const),
  );
  const levels = levelReadings(venue.gauge, water.id);
  const soundings = datumSoundings(
    venue.soundings.filter((sounding) => sounding.water === water.id),
    plane,
    new Map(pegs.map((peg) => [peg.peg, peg])),
    levels,
    water,
  );
  return { plane, stands, levels, soundings, surface: depthSurface(plane, soundings.used, marginDepths(pegs, stands)) };
}

/** The depths of records at the margin line of their pegs, and at the edge behind it: a margin is dug from the bank out. */
function marginDepths(pegs: readonly Peg[], stands: ReadonlyMap<PegKey, PegStand>): readonly MeasuredDepth[] {
  return pegs.flatMap((peg) => {
    const stand = stands.get(pegKey(peg.water, peg.peg))!;
    const { marginDepthMetres: depthMetres } = peg;
    if (depthMetres === undefined || stand.edgeMetres === null) return [];
    return [stand.edgeMetres, stand.edgeMetres + MARGIN_OUT_METRES].map((metres) => ({
      ...pointAhead(stand, metres),
      depthMetres,
    }));
  });
}
