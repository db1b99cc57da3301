import type { Day } from '../../../src/domain/day.ts';
import type { Chance } from '../chance.ts';
import { bankPatch, pegsAlongBank, roundPatch } from './bank-shapes.ts';
import { circuit, circuitPaths } from './circuit.ts';
import type { DrawnLine, DrawnWater } from './drawn-water.ts';
import { bankPlace, ringLength, type SpotRing, smoothRing } from './ring.ts';
import { type Spot, spotAt } from './spot.ts';
import { throwLinesAlong } from './throw-lines.ts';

/** About how far pegs stand apart along the bank. */
const PEG_SPACING_METRES = 15;
const CONTROLS = 16;

/** Draws any number of waters with so many pegs in all, side by side on a square of farmland. */
export function drawAnyWaters(waters: number, pegs: number, checkedOn: Day, chance: Chance): DrawnWater[] {
  const columns = Math.ceil(Math.sqrt(waters));
  const largest = Math.ceil(pegs / waters);
  const cellMetres = (largest * PEG_SPACING_METRES) / 2.2 + 160;
  return Array.from({ length: waters }, (_, i) => {
    const share = Math.floor(((i + 1) * pegs) / waters) - Math.floor((i * pegs) / waters);
    const centre = { x: (i % columns) * cellMetres, y: -Math.floor(i / columns) * cellMetres };
    return drawAnyWater(i + 1, share, centre, checkedOn, chance.apart(`water ${i + 1}`));
  });
}

function drawAnyWater(number: number, pegs: number, centre: Spot, checkedOn: Day, chance: Chance): DrawnWater {
  const id = `water-${number}`;
  const radius = Math.max(22, (pegs * PEG_SPACING_METRES) / (2 * Math.PI));
  const squareness = chance.between(0, 0.16);
  const controls = Array.from({ length: CONTROLS }, (_, i) => {
    const angle = (i * 2 * Math.PI) / CONTROLS;
    const reach = radius * (1 + squareness * Math.cos(4 * angle) + chance.between(-0.13, 0.13));
    return { x: centre.x + reach * Math.cos(angle), y: centre.y + reach * Math.sin(angle) };
  });
  const outline = smoothRing(controls, Math.max(4, radius / 14));
  const length = ringLength(outline);
  const patches = Array.from({ length: 3 }, () => chance.between(0, length - 20)).map(
    (from) => [from, from + 14] as const,
  );
  const depth = chance.between(1.2, 3.2);
  const islands = islandsOff(id, outline, Math.min(18, radius * 0.5), chance.whole(0, Math.ceil(pegs / 12)), chance);
  const carPark: Spot = { x: centre.x, y: centre.y - radius * 1.45 - 20 };
  const walk = circuit(outline, 4, 12);
  const [north, south] = [walk[0]!, walk[Math.floor(walk.length / 2)]!];
  const surfaces = { surface: 'grass', widthMetres: 1.1, gradient: 1 / 12, stepFree: true };
  const round = circuitPaths(walk, [
    { id: `${id}-first-half`, name: 'First half', from: north, ...surfaces },
    { id: `${id}-second-half`, name: 'Second half', from: south, ...surfaces, steps: 4, stepFree: false },
  ]);
  return {
    id,
    name: `Water ${number}`,
    kind: 'dug pit',
    datum: 'Top of the outlet board',
    closeSeason: 'none',
    access: 'Grass path all round.',
    notesMarkdown: 'An invented water, drawn by chance.',
    outline,
    islands,
    areas: [
      ...patches.slice(0, 2).map(([from, to], i) => ({
        id: `${id}-reeds-${i + 1}`,
        kind: 'reeds' as const,
        name: `Reeds ${i + 1}`,
        ring: bankPatch(outline, from, to, 2.5),
      })),
      { id: `${id}-trees`, kind: 'trees', name: 'Trees', ring: bankPatch(outline, ...patches[2]!, -8) },
      {
        id: `${id}-lilies`,
        kind: 'lilies',
        name: 'Lilies',
        ring: roundPatch(lilyBed(outline, chance.between(0, length)), 4, 2, 0, chance),
      },
    ],
    places: [
      { id: `${id}-car-park`, kind: 'car-park', name: `Car park ${number}`, at: carPark },
      {
        id: `${id}-gate`,
        kind: 'gate',
        name: `Gate ${number}`,
        at: { x: carPark.x + 12, y: carPark.y - 4 },
        vehicles: true,
        locked: 'no',
      },
      {
        id: `${id}-aerator`,
        kind: 'aerator',
        name: 'Aerator',
        at: spotAt(centre, chance.between(0, 360), radius * 0.6),
      },
      { id: `${id}-inlet`, kind: 'inlet', name: 'Inlet', at: bankPlace(outline, chance.between(0, length)).at },
      ...(number === 1 ? [{ id: 'aed', kind: 'aed' as const, name: 'Defibrillator', at: carPark }] : []),
      ...throwLinesAlong(outline, `W${number}-`, Math.max(1, Math.round(length / 100)), () => checkedOn),
    ],
    paths: [
      ...round,
      { id: `${id}-approach`, name: 'From the car park', line: [carPark, nearestOf(walk, carPark)], ...surfaces },
    ],
    overheadLines: number === 1 ? [lineOverWestBank(centre, radius)] : [],
    bank: {
      slopes: [2, 3, 4, 6],
      heightMetres: [0.3, 1.2],
      surfaces: ['grass', 'clay', 'bare earth'],
      platforms: ['timber', 'slabbed', 'recycled plastic'],
      platformHeightMetres: [0.2, 0.6],
      stepFreeShare: 0.4,
    },
    climate: { degreesOff: 0.4 - 0.25 * depth, levelShare: 1 },
    bed: {
      shelf: [
        [0, 0.4],
        [1.5, 0.35 * depth],
        [5, 0.7 * depth],
        [14, depth],
        [40, 1.15 * depth],
      ],
      humps: [
        {
          at: spotAt(centre, chance.between(0, 360), radius * 0.5),
          radiusMetres: radius * 0.2,
          riseMetres: 0.3 * depth,
        },
      ],
      undulationMetres: 0.06,
      shelfWander: { share: 0.25, metres: 0.08 },
    },
    bays: [],
    banks: [],
    pegsAlong: pegsAlongBank(outline, pegs, patches.slice(0, 2), chance),
    setBackMetres: 1.2,
  };
}

/** Small islands a short way off the bank, evenly round it so that none touches another. */
function islandsOff(id: string, outline: SpotRing, offMetres: number, count: number, chance: Chance) {
  const length = ringLength(outline);
  return Array.from({ length: count }, (_, i) => {
    const place = bankPlace(outline, ((i + chance.between(0.3, 0.7)) * length) / count, 10);
    const at = spotAt(place.at, place.inwardDegrees, offMetres);
    const ring = roundPatch(at, offMetres * 0.35, offMetres * 0.2, place.inwardDegrees + 90, chance);
    return { id: `${id}-island-${i + 1}`, name: `Island ${i + 1}`, ring };
  });
}

/** An 11 kV line along the west bank of a water: the pegs beneath it are closed. */
function lineOverWestBank(centre: Spot, radius: number): DrawnLine {
  const x = centre.x - radius * 1.05;
  return {
    id: 'overhead-line-1',
    name: '11 kV line',
    line: [
      { x, y: centre.y + radius * 1.6 },
      { x: x + radius * 0.1, y: centre.y - radius * 1.6 },
    ],
    voltageVolts: 11_000,
  };
}

function lilyBed(outline: SpotRing, along: number): Spot {
  const place = bankPlace(outline, along);
  return spotAt(place.at, place.inwardDegrees, 7);
}

function nearestOf(line: readonly Spot[], spot: Spot): Spot {
  return line.reduce((best, candidate) =>
    Math.hypot(candidate.x - spot.x, candidate.y - spot.y) < Math.hypot(best.x - spot.x, best.y - spot.y)
      ? candidate
      : best,
  );
}
