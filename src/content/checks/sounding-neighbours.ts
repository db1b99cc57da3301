import { type Peg, pegKey } from '../../domain/peg.ts';
import type { LatLng } from '../../domain/place.ts';
import type { Sounding } from '../../domain/venue.ts';
import { destination } from '../../ground/geodesy/destination.ts';
import { localPlane } from '../../ground/geodesy/local-plane.ts';
import type { Content } from '../content.ts';
import type { Fault } from '../fault.ts';
import type { PlacedRow } from '../read-rows.ts';
import { faultAt } from '../sources/source.ts';

/** Depths are compared within this distance: the one up to which the guide counts a depth as plumbed. */
const NEAR_METRES = 10;
/** So many depths around one make a bed of which it can be said to stick out. Our own choice. */
const MIN_NEIGHBOURS = 4;
/** A depth is asked about beyond the range of those around it by this much, and by as much as that range is wide. Our own choice. */
const MIN_STEP_METRES = 1.5;
/** A lake bed has so many near places at most; a crowd of depths on one spot is not gone through over and over. */
const MAX_NEIGHBOURS = 60;

interface Plumbed {
  readonly x: number;
  readonly y: number;
  readonly depthMetres: number;
  readonly row: PlacedRow<Sounding>;
}

/** A depth that lies far from every depth around it is a slip of the pen more often than a hole: the club is asked. */
export function checkSoundingNeighbours({ soundings, pegs, settings }: Content): readonly Fault[] {
  const byKey = new Map(pegs.map(({ value }) => [pegKey(value.water, value.peg), value]));
  return [...Map.groupBy(soundings, ({ value }) => value.water).values()].flatMap((ofWater) =>
    oddOnes(plumbed(ofWater, byKey)).map(({ one, low, high }) => {
      const feet = settings.units.length === 'ft' ? 0.3048 : 1;
      const shown = (metres: number) => `${(metres / feet).toFixed(1)} ${settings.units.length}`;
      return faultAt(one.row.source(), ['depth'], {
        rule: 'sounding-odd',
        found: `a depth of ${shown(one.depthMetres)} where all others within ${NEAR_METRES} m are ${shown(low)} to ${shown(high)}`,
        expected: 'a depth near those around it',
        mend: 'Look for a lost decimal point, swapped figures or the wrong unit. If it is a hole or a bar, plumb beside it too and leave it: it counts as it stands.',
        severity: 'warning',
      });
    }),
  );
}

function plumbed(rows: readonly PlacedRow<Sounding>[], pegs: ReadonlyMap<string, Peg>): readonly Plumbed[] {
  const placed = rows.flatMap((row) => {
    const at = placeOf(row.value, pegs);
    return at === null ? [] : [{ at, row }];
  });
  const [first] = placed;
  if (first === undefined) return [];
  const plane = localPlane(first.at);
  return placed.map(({ at, row }) => ({
    ...plane.toPlane(at),
    depthMetres: row.value.depthMetres - (row.value.levelMetres ?? 0),
    row,
  }));
}

function placeOf({ at, water, fromPeg }: Sounding, pegs: ReadonlyMap<string, Peg>): LatLng | null {
  if (at !== undefined) return at;
  const peg = fromPeg && pegs.get(pegKey(water, fromPeg.peg));
  // Where a platform was moved the place is another one, by a record that other checks look at.
  if (fromPeg === undefined || peg === undefined || (peg.moved ?? []).length > 0) return null;
  return destination(peg.at, fromPeg.bearingDegrees ?? peg.facingDegrees, fromPeg.distanceMetres);
}

function oddOnes(
  all: readonly Plumbed[],
): readonly { readonly one: Plumbed; readonly low: number; readonly high: number }[] {
  const squares = Map.groupBy(all, ({ x, y }) => squareOf(x, y));
  return all.flatMap((one) => {
    const depths = neighbours(one, squares).map(({ depthMetres }) => depthMetres);
    if (depths.length < MIN_NEIGHBOURS) return [];
    const low = Math.min(...depths);
    const high = Math.max(...depths);
    const beyond = Math.max(low - one.depthMetres, one.depthMetres - high);
    return beyond > Math.max(MIN_STEP_METRES, high - low) ? [{ one, low, high }] : [];
  });
}

function neighbours(one: Plumbed, squares: ReadonlyMap<string, readonly Plumbed[]>): readonly Plumbed[] {
  const found: Plumbed[] = [];
  for (const dx of [-1, 0, 1]) {
    for (const dy of [-1, 0, 1]) {
      for (const other of squares.get(squareOf(one.x + dx * NEAR_METRES, one.y + dy * NEAR_METRES)) ?? []) {
        if (found.length === MAX_NEIGHBOURS) return found;
        if (other !== one && Math.hypot(other.x - one.x, other.y - one.y) <= NEAR_METRES) found.push(other);
      }
    }
  }
  return found;
}

function squareOf(x: number, y: number): string {
  return `${Math.floor(x / NEAR_METRES)} ${Math.floor(y / NEAR_METRES)}`;
}
