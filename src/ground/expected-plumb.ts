import type { Day } from '../domain/day.ts';
import { pegKey } from '../domain/peg.ts';
import type { LatLng } from '../domain/place.ts';
import type { Venue } from '../domain/venue.ts';
import { datumShiftSince } from '../domain/water-history.ts';
import { levelOnDay } from './depth/level-on-day.ts';
import { depthAhead } from './line-depths.ts';
import { pointAhead } from './peg-stand.ts';
import type { NoDepth } from './survey.ts';
import { type WaterDepths, waterDepths } from './water-depths.ts';

/** What a plumb should find straight out from a peg on a day, by the survey. */
export interface ExpectedPlumb {
  readonly at: LatLng;
  /** Down from the surface of that day; null where nobody plumbed or there is no water. */
  readonly depthMetres: number | null;
  readonly nearestSoundingMetres: number | null;
  /** Said where there is no depth. */
  readonly why?: NoDepth;
  /** Whether the gauge tells how the water stood that day; else it counts as standing at datum. */
  readonly isLevelKnown: boolean;
}

/** Tells of any line what a plumb should find there; null for a peg that is not in the guide or faces no water. */
export type PlumbExpecter = (water: string, peg: string, lineMetres: number, day: Day) => ExpectedPlumb | null;

/** Prepares the waters of a checked venue as they are asked for. */
export function plumbExpecter(venue: Venue): PlumbExpecter {
  const laidOut = new Map<string, WaterDepths>();
  return (id, peg, lineMetres, day) => {
    const water = venue.waters.find((each) => each.id === id);
    if (water === undefined) return null;
    const depths = laidOut.get(id) ?? waterDepths(water, venue);
    laidOut.set(id, depths);
    const stand = depths.stands.get(pegKey(id, peg));
    if (stand === undefined || stand.edgeMetres === null) return null;
    const level = levelOnDay(depths.levels, day);
    const there = depthAhead(stand, depths.surface, lineMetres);
    const shift = datumShiftSince(day, water);
    return {
      ...there,
      at: depths.plane.plane.toPosition(pointAhead(stand, lineMetres)),
      depthMetres: there.depthMetres === null ? null : Math.max(0, there.depthMetres + (level?.metres ?? 0) - shift),
      isLevelKnown: level !== null,
    };
  };
}
