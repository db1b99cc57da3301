import type { Day } from '../../../src/domain/day.ts';
import type { LatLng } from '../../../src/domain/place.ts';
import type { Sounding } from '../../../src/domain/venue.ts';
import type { Chance } from '../chance.ts';
import type { Weather } from '../log/weather.ts';
import { depthAt } from './bed.ts';
import type { DrawnWater } from './drawn-water.ts';
import type { PegStand } from './peg-stands.ts';
import { rounded, type Spot, spotAt } from './spot.ts';

/** How a water was plumbed. */
export interface Plumbing {
  /** Spacing of the boat's grid. */
  readonly gridMetres: number;
  /** Only spots for which this holds were plumbed. */
  readonly where: (spot: Spot) => boolean;
  /** Distances from the pegs plumbed with a pole, straight ahead. */
  readonly poleMetres: readonly number[];
  /** The days the boat was out, west half and east half, and the day of the poled lines. */
  readonly days: { readonly west: Day; readonly east: Day; readonly pole: Day };
}

/** Plumb lines read to about an inch. */
const READING_SD_METRES = 0.025;

/** Plumbs a water: a boat's grid by position, and poled lines by peg, distance and bearing. */
export function plumb(
  water: DrawnWater,
  stands: readonly PegStand[],
  plumbing: Plumbing,
  weather: Weather,
  place: (spot: Spot) => LatLng,
  chance: Chance,
): Sounding[] {
  const rows: Omit<Sounding, 'file' | 'line' | 'water'>[] = [];
  const read = (spot: Spot, day: string, isLevelNoted: boolean) => {
    const depth = depthAt(water, spot);
    if (depth === null) return null;
    const level = weather.on(day, water.id).levelMetres;
    const depthMetres = rounded(Math.max(0.05, depth + level + READING_SD_METRES * chance.normal()), 2);
    return { depthMetres, day, ...(isLevelNoted ? { levelMetres: level } : {}) };
  };
  const middle = middleOf(water);
  for (const spot of gridOver(water, plumbing.gridMetres, chance)) {
    const day = spot.x > middle ? plumbing.days.east : plumbing.days.west;
    const reading = plumbing.where(spot) ? read(spot, day, true) : null;
    if (reading !== null) rows.push({ at: place(spot), ...reading });
  }
  for (const stand of stands) {
    if (!stand.clearance.open) continue;
    for (const metres of plumbing.poleMetres) {
      const bearingDegrees = chance.happens(0.5)
        ? undefined
        : (stand.facingDegrees + chance.whole(-12, 12) + 360) % 360;
      // Level left to the gauge: nobody walks to the board with a pole in the hand.
      const reading = read(spotAt(stand.at, bearingDegrees ?? stand.facingDegrees, metres), plumbing.days.pole, false);
      const fromPeg = {
        peg: stand.peg,
        distanceMetres: metres,
        ...(bearingDegrees === undefined ? {} : { bearingDegrees }),
      };
      if (reading !== null) rows.push({ fromPeg, ...reading });
    }
  }
  return rows.map((row, i) => ({ water: water.id, ...row, file: `soundings/${water.id}.csv`, line: i + 2 }));
}

function middleOf(water: DrawnWater): number {
  const xs = water.outline.map((spot) => spot.x);
  return (Math.min(...xs) + Math.max(...xs)) / 2;
}

function gridOver(water: DrawnWater, gridMetres: number, chance: Chance): Spot[] {
  const xs = water.outline.map((spot) => spot.x);
  const ys = water.outline.map((spot) => spot.y);
  const spots: Spot[] = [];
  for (let y = Math.min(...ys) + gridMetres / 3; y < Math.max(...ys); y += gridMetres) {
    for (let x = Math.min(...xs) + gridMetres / 3; x < Math.max(...xs); x += gridMetres) {
      const drift = gridMetres * 0.25;
      spots.push({ x: x + chance.between(-drift, drift), y: y + chance.between(-drift, drift) });
    }
  }
  return spots;
}
