import type { Chance } from '../chance.ts';
import { bankPatch, pegsAlongBank, roundPatch } from './bank-shapes.ts';
import { circuit, circuitPaths, nearestIndex } from './circuit.ts';
import type { DrawnPath, DrawnWater } from './drawn-water.ts';
import { LODGE_CAR_PARK } from './lodge.ts';
import { bankPlace, nearestAlong, smoothRing } from './ring.ts';
import type { Spot } from './spot.ts';
import { throwLinesAlong } from './throw-lines.ts';

const CENTRE: Spot = { x: 170, y: 62 };

/** Bank of the old clay pit, from its south-west corner round by the south: four corners, a point, a bay. */
const CONTROLS: readonly (readonly [number, number])[] = [
  [-92, -44],
  [-86, -55],
  [-72, -60],
  [-48, -61],
  [-26, -57],
  [-14, -44],
  [-6, -32],
  [4, -31],
  [12, -43],
  [24, -57],
  [50, -62],
  [72, -61],
  [86, -56],
  [93, -43],
  [94, -15],
  [92, 12],
  [95, 38],
  [92, 53],
  [80, 61],
  [58, 63],
  [40, 66],
  [28, 78],
  [12, 85],
  [-6, 83],
  [-18, 72],
  [-30, 63],
  [-55, 61],
  [-76, 61],
  [-89, 53],
  [-94, 38],
  [-92, 12],
  [-97, -15],
];

/** The 11 kV line: it leans across the venue and passes over the east bank. */
const LINE: readonly Spot[] = [
  { x: 303, y: -215 },
  { x: 277, y: -30 },
  { x: 259, y: 98 },
  { x: 229, y: 312 },
];

/** Kiln Pool: the old clay pit, deep under the rod top. */
export function drawKilnPool(chance: Chance, pegs: number): DrawnWater {
  const outline = smoothRing(
    CONTROLS.map(([x, y]) => ({ x: CENTRE.x + x, y: CENTRE.y + y })),
    6,
  );
  const along = (x: number, y: number) => nearestAlong(outline, { x: CENTRE.x + x, y: CENTRE.y + y });
  const southReeds = [along(58, -62), along(86, -56)] as const;
  const eastFence = [along(94, -30), along(93, -2)] as const;
  const eastAlders = [along(94, 20), along(94, 44)] as const;
  const northTrees = [along(88, 58), along(42, 66)] as const;
  const westReeds = [along(-94, 30), along(-93, 14)] as const;
  const bayReeds = [along(30, 77), along(20, 82)] as const;
  const inlet = along(-96, -12);
  const carPark: Spot = { x: 52, y: 50 };
  const eastPullIn: Spot = { x: 322, y: 84 };
  const throwLines = throwLinesAlong(outline, 'K', 7, (i) => (i === 4 ? '2026-09-19' : '2026-11-14'));
  return {
    id: 'kiln-pool',
    name: 'Kiln Pool',
    kind: 'old clay pit',
    datum: 'Brass stud in the brick of the outfall sill',
    closeSeason: 'none',
    access: 'Stone car park on the west side; a level stone path along the west bank, grass and steps elsewhere.',
    notesMarkdown: KILN_NOTES,
    outline,
    islands: [],
    areas: [
      { id: 'kiln-south-reeds', kind: 'reeds', name: 'South-east reeds', ring: bankPatch(outline, ...southReeds, 5) },
      { id: 'kiln-west-reeds', kind: 'reeds', name: 'West reeds', ring: bankPatch(outline, ...westReeds, 3.5) },
      { id: 'kiln-bay-reeds', kind: 'reeds', name: 'Bay reeds', ring: bankPatch(outline, ...bayReeds, 3) },
      {
        id: 'kiln-lilies',
        kind: 'lilies',
        name: 'Bay lilies',
        ring: roundPatch({ x: CENTRE.x - 2, y: CENTRE.y + 73 }, 9, 4, 95, chance),
      },
      { id: 'kiln-alders', kind: 'trees', name: 'North-east alders', ring: bankPatch(outline, ...northTrees, -11) },
      {
        id: 'kiln-trucks',
        kind: 'snag',
        name: 'Sunken clay trucks',
        ring: roundPatch({ x: CENTRE.x - 38, y: CENTRE.y - 34 }, 5, 3, 40, chance),
      },
    ],
    places: [
      { id: 'kiln-car-park', kind: 'car-park', name: 'Kiln car park', at: carPark },
      { id: 'kiln-east-pull-in', kind: 'car-park', name: 'East track pull-in', at: eastPullIn },
      {
        id: 'drove-gate',
        kind: 'gate',
        name: 'Drove gate',
        at: { x: 338, y: 88 },
        vehicles: true,
        ambulance: true,
        locked: 'night',
        openedBy: 'Bailiff on duty',
        note: 'Padlocked at dusk; the way in passes below the 11 kV line.',
      },
      {
        id: 'kiln-gate',
        kind: 'gate',
        name: 'Kiln car park gate',
        at: { x: 40, y: 58 },
        vehicles: true,
        ambulance: true,
        locked: 'no',
      },
      { id: 'kiln-inlet', kind: 'inlet', name: 'Land drain', at: bankPlace(outline, inlet).at },
      { id: 'kiln-outlet', kind: 'outlet', name: 'Outfall', at: bankPlace(outline, along(-20, -54)).at },
      { id: 'kiln-gauge', kind: 'gauge', name: 'Gauge board', at: bankPlace(outline, along(-24, -57)).at },
      ...throwLines,
    ],
    paths: kilnPaths(circuit(outline, 4.2, 9), carPark, eastPullIn),
    overheadLines: [
      { id: 'osier-11kv', name: '11 kV wood-pole line', line: LINE, voltageVolts: 11_000, conductorSpreadMetres: 2 },
    ],
    bank: {
      slopes: [1.5, 2, 2, 2.5, 3],
      heightMetres: [0.9, 1.7],
      surfaces: ['grass', 'clay', 'clay', 'grass and clay'],
      platforms: ['timber', 'timber', 'scaffold and board', 'recycled plastic'],
      platformHeightMetres: [0.35, 0.75],
      stepFreeShare: 0.15,
    },
    climate: { degreesOff: -0.4, levelShare: 1.4 },
    bed: {
      shelf: [
        [0, 0.85],
        [1, 1.3],
        [3, 2.1],
        [6, 2.9],
        [11, 3.5],
        [20, 4.1],
        [45, 4.7],
      ],
      humps: [
        { at: { x: CENTRE.x + 28, y: CENTRE.y + 8 }, radiusMetres: 16, riseMetres: 2.1 },
        { at: { x: CENTRE.x - 50, y: CENTRE.y + 20 }, radiusMetres: 12, riseMetres: -0.8 },
        { at: { x: CENTRE.x + 2, y: CENTRE.y - 24 }, radiusMetres: 9, riseMetres: 1.2 },
        { at: { x: CENTRE.x + 8, y: CENTRE.y + 74 }, radiusMetres: 17, riseMetres: 1.1 },
      ],
      undulationMetres: 0.16,
      shelfWander: { share: 0.3, metres: 0.22 },
    },
    bays: [{ at: { x: CENTRE.x + 4, y: CENTRE.y + 82 }, radiusMetres: 32 }],
    banks: [
      { lastPeg: 1, name: 'West bank' },
      { lastPeg: 14, name: 'South bank' },
      { lastPeg: 18, name: 'East bank' },
      { lastPeg: 28, name: 'North bank' },
      { lastPeg: 34, name: 'West bank' },
    ],
    pegsAlong: pegsAlongBank(
      outline,
      pegs,
      [southReeds, eastFence, eastAlders, northTrees, westReeds, bayReeds, [inlet - 3, inlet + 3]],
      chance,
    ),
    setBackMetres: 1.4,
  };
}

function kilnPaths(ring: readonly Spot[], carPark: Spot, eastPullIn: Spot): DrawnPath[] {
  const from = (x: number, y: number): Spot => ({ x: CENTRE.x + x, y: CENTRE.y + y });
  const trackEnd = ring[nearestIndex(ring, from(100, 20))]!;
  return [
    ...circuitPaths(ring, [
      {
        id: 'kiln-west-south',
        name: 'West bank, southern half',
        from: carPark,
        surface: 'stone',
        widthMetres: 1.5,
        gradient: 1 / 33,
        stepFree: true,
      },
      {
        id: 'kiln-south-west',
        name: 'South bank to the point',
        from: from(-92, -60),
        surface: 'grass',
        widthMetres: 1.1,
        gradient: 1 / 12,
        stepFree: true,
      },
      {
        id: 'kiln-south-east',
        name: 'South bank past the point',
        from: from(-10, -50),
        surface: 'grass',
        widthMetres: 0.9,
        steps: 5,
        gradient: 1 / 8,
        stepFree: false,
      },
      { id: 'kiln-east', name: 'East bank', from: from(96, -62), surface: 'grass', widthMetres: 1, gradient: 1 / 10 },
      {
        id: 'kiln-north-east',
        name: 'Alder bank',
        from: trackEnd,
        surface: 'grass',
        widthMetres: 0.8,
        gradient: 1 / 10,
      },
      {
        id: 'kiln-north',
        name: 'North bank and bay',
        from: from(94, 62),
        surface: 'bare earth',
        widthMetres: 0.9,
        steps: 7,
        gradient: 1 / 6,
        stepFree: false,
      },
      {
        id: 'kiln-north-west',
        name: 'North bank, western half',
        from: from(-34, 68),
        surface: 'grass',
        widthMetres: 1.1,
        gradient: 1 / 12,
        stepFree: true,
      },
      {
        id: 'kiln-west-north',
        name: 'West bank, northern half',
        from: from(-96, 62),
        surface: 'stone',
        widthMetres: 1.5,
        gradient: 1 / 25,
        stepFree: true,
      },
    ]),
    {
      id: 'kiln-east-track',
      name: 'Track from the drove',
      line: [{ x: 338, y: 88 }, eastPullIn, { x: 295, y: 84 }, trackEnd],
      surface: 'stone',
      widthMetres: 2.4,
      gradient: 1 / 20,
      stepFree: true,
    },
    {
      id: 'lodge-to-kiln',
      name: 'Lodge to Kiln Pool',
      line: [LODGE_CAR_PARK, { x: -20, y: 30 }, { x: 20, y: 44 }, carPark],
      surface: 'stone',
      widthMetres: 1.8,
      gradient: 1 / 33,
      stepFree: true,
    },
    {
      id: 'kiln-car-park-ramp',
      name: 'Ramp to the west bank',
      line: [carPark, ring[nearestIndex(ring, carPark)]!],
      surface: 'stone',
      widthMetres: 1.6,
      gradient: 1 / 20,
      stepFree: true,
    },
  ];
}

const KILN_NOTES = `Dug for brick clay and left to fill. The sides go down like a stair: a ledge the width of a chair, then two
metres of water, then three. It holds its cold late into spring and its warmth late into autumn.

Silvers live here all year; the carp are fewer and larger than next door and come up in the water from May. Most of the
water is over 3 m, so plumb twice: the clay left humps and holes that no map of the surface shows.

The **11 kV line** along the east bank closes the pegs beneath it. Nobody fishes, tackles up or eats lunch there.`;
