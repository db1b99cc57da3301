import type { Peg } from '../../domain/peg.ts';
import { distanceMetres } from '../../ground/geodesy/geodesic-between.ts';
import type { WaterPlane } from '../../ground/water-plane.ts';
import type { Content, PlacedWater } from '../content.ts';
import type { Fault } from '../fault.ts';
import { faultAt, type Placed } from '../sources/source.ts';
import { FAR_METRES, isSwapped, metresFromOutline, shownMetres } from './far-from-water.ts';
import type { WaterGrounds } from './water-grounds.ts';

/** Maps and receivers are a few metres out, and platforms stand over the edge: so far into the water is no fault. */
const INTO_WATER_METRES = 3;
/** Nobody fishes from farther back. */
const FROM_WATER_METRES = 60;
/** Nearer than this two pegs are one place. */
const ONE_SPOT_METRES = 1;

/** Pegs stand at the edge of their water: not in it, not far from it, and not on one spot with another. */
export function checkPegPositions(content: Content, grounds: WaterGrounds): readonly Fault[] {
  const pegsOf = Map.groupBy(content.pegs, ({ value }) => value.water);
  return content.waters.flatMap((water) => {
    const ground = grounds.get(water.id);
    const pegs = pegsOf.get(water.id) ?? [];
    const shared = sharedSpots(pegs);
    if (ground === undefined) return shared;
    const turned = pegs.filter(({ value }) => isSwapped(ground, value.at));
    // A record names lat and lng; where most pegs disagree with the map, it is the map's order that is wrong.
    if (turned.length > 1 && turned.length > pegs.length / 2) return [...swappedMap(water), ...shared];
    return [...pegs.flatMap((peg) => positionFaults(peg, ground)), ...shared];
  });
}

/** What is wrong with the place of one peg. */
export function positionFaults({ value: peg, source }: Placed<Peg>, ground: WaterPlane): readonly Fault[] {
  const fault = (rule: string, found: string, expected: string, mend: string) => [
    faultAt(source, ['position'], { rule, found, expected, mend }),
  ];
  const from = metresFromOutline(ground, peg.at);
  if (from > FAR_METRES) {
    const isTurned = isSwapped(ground, peg.at);
    return fault(
      isTurned ? 'position-swapped' : 'position-far',
      `a place ${shownMetres(from)} from ${peg.water}`,
      `a place within ${FROM_WATER_METRES} m of the water`,
      isTurned ? 'Latitude and longitude are swapped: exchange the two.' : 'Look the position up again.',
    );
  }
  const p = ground.plane.toPlane(peg.at);
  const edgeMetres = ground.shoreIndex.nearest(p)!.distanceMetres;
  if (!ground.isWater(p)) {
    if (edgeMetres <= FROM_WATER_METRES) return [];
    return fault(
      'position-far',
      `a place ${shownMetres(edgeMetres)} from the edge of ${peg.water}`,
      `a place within ${FROM_WATER_METRES} m of the water`,
      'Look the position up again, or correct the outline.',
    );
  }
  const allowed = INTO_WATER_METRES + (peg.platform?.lengthMetres ?? 0);
  if (edgeMetres <= allowed) return [];
  return fault(
    'position-in-water',
    `a place in the water, ${edgeMetres.toFixed(1)} m from the bank`,
    `a place on the bank, or at most ${allowed} m over the edge as drawn (the map may be out, and a platform reaches out)`,
    'Look the position up again, or correct the outline or the length of the platform.',
  );
}

function swappedMap({ id, map }: PlacedWater): readonly Fault[] {
  if (map === null) return [];
  const fault = faultAt(map.source, map.pathOf(map.map.outline), {
    rule: 'map-swapped',
    found: `an outline far from the pegs of ${id}, which would lie beside them with latitude and longitude swapped`,
    expected: 'positions as [longitude, latitude]',
    mend: 'Export the map again as GeoJSON. If the map is right, exchange lat and lng in the pegs.',
  });
  return [{ ...fault, field: 'coordinates' }];
}

function sharedSpots(pegs: readonly Placed<Peg>[]): readonly Fault[] {
  const byCell = new Map<string, Placed<Peg>>();
  return pegs.flatMap((peg) => {
    const { lat, lng } = peg.value.at;
    const near = neighbouringCells(lat, lng)
      .map((cell) => byCell.get(cell))
      .find((other) => other !== undefined && distanceMetres(other.value.at, peg.value.at) < ONE_SPOT_METRES);
    byCell.set(cellOf(lat, lng), byCell.get(cellOf(lat, lng)) ?? peg);
    if (near === undefined) return [];
    return [
      faultAt(peg.source, ['position'], {
        rule: 'position-shared',
        found: `the place of peg ${near.value.peg}`,
        expected: 'a place of its own',
        mend: 'Correct one of the two positions.',
        severity: 'warning',
      }),
    ];
  });
}

/** Cells of 0.0001°, eleven metres of latitude: every peg within a metre is in the cell or the next. */
function cellOf(lat: number, lng: number): string {
  return `${Math.floor(lat * 1e4)} ${Math.floor(lng * 1e4)}`;
}

function neighbouringCells(lat: number, lng: number): readonly string[] {
  const steps = [-1e-4, 0, 1e-4];
  return steps.flatMap((north) => steps.map((east) => cellOf(lat + north, lng + east)));
}
