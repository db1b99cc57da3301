import type { Day } from '../../domain/day.ts';
import type { Peg } from '../../domain/peg.ts';
import type { Sounding } from '../../domain/venue.ts';
import { datumShiftSince, type WaterHistory } from '../../domain/water-history.ts';
import { destination } from '../geodesy/destination.ts';
import type { PlanePoint } from '../plane/plane-point.ts';
import type { UnusedSoundings } from '../survey.ts';
import type { WaterPlane } from '../water-plane.ts';
import { type LevelReading, levelOnDay } from './level-on-day.ts';

/** A sounding laid out on its water's plane, its depth below datum. */
export interface DatumSounding extends PlanePoint {
  readonly depthMetres: number;
  readonly day: Day;
}

/** What became of a water's soundings. */
export interface DatumSoundings {
  readonly used: readonly DatumSounding[];
  /** Of those used, how many had no level noted and no gauge reading near in time: their depth stands as plumbed. */
  readonly uncorrected: number;
  readonly unused: readonly UnusedSoundings[];
}

/** Soundings in one square of this size are at one place. */
const ONE_PLACE_METRES = 0.1;

/**
 * Brings a water's soundings to its datum: the depth less the level above datum of that day, as noted, or else the
 * gauge's nearest reading within seven days, both against the zero of their day; where zero was set elsewhere since, that is added. A bed that stands dry at datum counts as depth 0. Of several soundings at
 * one place (the same tenth of a metre) those of the latest day stand, as their mean: a bed silts up and is dug out.
 */
export function datumSoundings(
  soundings: readonly Sounding[],
  water: WaterPlane,
  pegs: ReadonlyMap<string, Peg>,
  levels: readonly LevelReading[],
  history: WaterHistory = {},
): DatumSoundings {
  const unused = new Map<UnusedSoundings['why'], number>();
  const leaveOut = (why: UnusedSoundings['why'], count = 1) => unused.set(why, (unused.get(why) ?? 0) + count);
  const atPlace = new Map<string, (DatumSounding & { corrected: boolean })[]>();
  for (const sounding of soundings) {
    const at = positionOf(sounding, pegs);
    if (at === null) {
      leaveOut('peg-unknown');
      continue;
    }
    const p = water.plane.toPlane(at);
    if (!water.isWater(p) && water.shoreIndex.nearest(p)!.distanceMetres > ON_THE_EDGE_METRES) {
      leaveOut(isOnIsland(water, p) ? 'on-island' : 'outside');
      continue;
    }
    const level = sounding.levelMetres ?? levelOnDay(levels, sounding.day)?.metres;
    const depthMetres = Math.max(0, sounding.depthMetres - (level ?? 0) + datumShiftSince(sounding.day, history));
    const key = `${Math.round(p.x / ONE_PLACE_METRES)} ${Math.round(p.y / ONE_PLACE_METRES)}`;
    const others = atPlace.get(key);
    const here = { ...p, depthMetres, day: sounding.day, corrected: level !== undefined };
    if (others === undefined) atPlace.set(key, [here]);
    else others.push(here);
  }

  const used: DatumSounding[] = [];
  let uncorrected = 0;
  for (const here of atPlace.values()) {
    const day = here
      .map((sounding) => sounding.day)
      .sort()
      .at(-1)!;
    const standing = here.filter((sounding) => sounding.day === day);
    if (standing.length < here.length) leaveOut('plumbed-again', here.length - standing.length);
    if (standing.some(({ corrected }) => !corrected)) uncorrected++;
    const depthMetres = standing.reduce((sum, sounding) => sum + sounding.depthMetres, 0) / standing.length;
    used.push({ x: standing[0]!.x, y: standing[0]!.y, depthMetres, day });
  }
  return { used, uncorrected, unused: [...unused].map(([why, count]) => ({ why, soundings: count })) };
}

/** A plumb taken over the edge of a platform may fall this far outside the drawn line. */
export const ON_THE_EDGE_METRES = 0.3;

function positionOf({ at, fromPeg }: Sounding, pegs: ReadonlyMap<string, Peg>) {
  if (at !== undefined) return at;
  const peg = fromPeg === undefined ? undefined : pegs.get(fromPeg.peg);
  if (fromPeg === undefined || peg === undefined) return null;
  return destination(peg.at, fromPeg.bearingDegrees ?? peg.facingDegrees, fromPeg.distanceMetres);
}

function isOnIsland(water: WaterPlane, p: PlanePoint): boolean {
  return water.islandIndexes.some((index) => index.isInside(p));
}
