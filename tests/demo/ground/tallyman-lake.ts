import type { Chance } from '../chance.ts';
import { bankPatch, pegsAlongBank, roundPatch } from './bank-shapes.ts';
import { circuit, circuitPaths, nearestIndex } from './circuit.ts';
import type { DrawnPath, DrawnWater } from './drawn-water.ts';
import { LODGE_CAR_PARK } from './lodge.ts';
import { bankPlace, nearestAlong, smoothRing } from './ring.ts';
import type { Spot } from './spot.ts';
import { throwLinesAlong } from './throw-lines.ts';

/** The match lake's bank from its south-west corner by the south: near enough an oblong, tilted a little. */
const CONTROLS: readonly Spot[] = [
  [-232, 34],
  [-222, 27],
  [-205, 26],
  [-178, 31],
  [-150, 33],
  [-128, 39],
  [-112, 43],
  [-103, 52],
  [-102, 68],
  [-106, 86],
  [-115, 95],
  [-132, 95],
  [-158, 89],
  [-184, 86],
  [-206, 82],
  [-224, 78],
  [-235, 69],
  [-237, 52],
].map(([x, y]) => ({ x: x!, y: y! }));

/** Tallyman Lake: the small match lake beside the lodge. */
export function drawTallymanLake(chance: Chance, pegs: number): DrawnWater {
  const outline = smoothRing(CONTROLS, 5.5);
  const along = (x: number, y: number) => nearestAlong(outline, { x, y });
  const westReeds = [along(-237, 62), along(-237, 46)] as const;
  const southReeds = [along(-170, 32), along(-160, 32)] as const;
  return {
    id: 'tallyman-lake',
    name: 'Tallyman Lake',
    kind: 'small match lake',
    datum: 'Lip of the overflow pipe',
    closeSeason: 'none',
    access: 'Beside the lodge; a level stone path all the way round, 1.5 m wide on the south and east banks.',
    notesMarkdown: NOTES,
    outline,
    islands: [],
    areas: [
      { id: 'tallyman-west-reeds', kind: 'reeds', name: 'West reeds', ring: bankPatch(outline, ...westReeds, 4) },
      { id: 'tallyman-south-reeds', kind: 'reeds', name: 'South reeds', ring: bankPatch(outline, ...southReeds, 2.4) },
      {
        id: 'tallyman-lilies',
        kind: 'lilies',
        name: 'Corner lilies',
        ring: roundPatch({ x: -222, y: 66 }, 6, 4, 60, chance),
      },
      {
        id: 'tallyman-lodge-building',
        kind: 'building',
        name: 'Lodge',
        ring: [
          { x: -66, y: 34 },
          { x: -52, y: 36 },
          { x: -54, y: 46 },
          { x: -68, y: 44 },
        ],
      },
      {
        id: 'tallyman-poplars',
        kind: 'trees',
        name: 'Poplars',
        ring: bankPatch(outline, along(-150, 91), along(-200, 84), -10).map((spot) => ({ x: spot.x, y: spot.y + 6 })),
      },
    ],
    places: [
      { id: 'lodge-car-park', kind: 'car-park', name: 'Lodge car park', at: LODGE_CAR_PARK },
      { id: 'lodge', kind: 'lodge', name: 'Lodge', at: { x: -60, y: 34 }, note: 'Draw, weigh sheets, first-aid box.' },
      {
        id: 'lodge-aed',
        kind: 'aed',
        name: 'Defibrillator, lodge wall',
        at: { x: -58, y: 35 },
        note: 'Unlocked cabinet on the outside wall; 999 will direct you.',
        checkedOn: '2026-11-14',
      },
      { id: 'lodge-toilet', kind: 'toilet', name: 'Toilets', at: { x: -53, y: 38 } },
      {
        id: 'brick-lane-gate',
        kind: 'gate',
        name: 'Brick Lane gate',
        at: { x: -20, y: 2 },
        vehicles: true,
        ambulance: true,
        locked: 'night',
        openedBy: 'Bailiff on duty',
        hours: 'in daylight',
        note: 'No height bar.',
      },
      { id: 'tallyman-aerator', kind: 'aerator', name: 'Paddle aerator', at: { x: -141, y: 64 } },
      { id: 'tallyman-inlet', kind: 'inlet', name: 'Borehole pipe', at: bankPlace(outline, along(-102, 76)).at },
      { id: 'tallyman-outlet', kind: 'outlet', name: 'Overflow pipe', at: bankPlace(outline, along(-237, 54)).at },
      { id: 'tallyman-gauge', kind: 'gauge', name: 'Gauge board', at: bankPlace(outline, along(-112, 43)).at },
      ...throwLinesAlong(outline, 'T', 4, () => '2026-11-14'),
    ],
    paths: tallymanPaths(circuit(outline, 4, 8)),
    overheadLines: [],
    bank: {
      slopes: [4, 5, 6, 8],
      heightMetres: [0.3, 0.6],
      surfaces: ['stone', 'grass', 'stone'],
      platforms: ['recycled plastic', 'slabbed', 'timber'],
      platformHeightMetres: [0.2, 0.35],
      stepFreeShare: 0.85,
    },
    climate: { degreesOff: 0.4, levelShare: 0.6 },
    bed: {
      shelf: [
        [0, 0.38],
        [1, 0.6],
        [2.5, 0.9],
        [5, 1.25],
        [9, 1.45],
        [20, 1.55],
      ],
      humps: [{ at: { x: -222, y: 52 }, radiusMetres: 16, riseMetres: 0.35 }],
      undulationMetres: 0.05,
      shelfWander: { share: 0.25, metres: 0.07 },
    },
    bays: [],
    banks: [],
    pegsAlong: pegsAlongBank(outline, pegs, [westReeds, southReeds], chance),
    setBackMetres: 1.1,
  };
}

function tallymanPaths(ring: readonly Spot[]): DrawnPath[] {
  return [
    ...circuitPaths(ring, [
      {
        id: 'tallyman-south',
        name: 'South bank',
        from: { x: -236, y: 30 },
        surface: 'stone',
        widthMetres: 1.5,
        gradient: 1 / 33,
        stepFree: true,
      },
      {
        id: 'tallyman-east',
        name: 'East bank',
        from: { x: -100, y: 42 },
        surface: 'stone',
        widthMetres: 1.5,
        gradient: 1 / 33,
        stepFree: true,
      },
      {
        id: 'tallyman-north',
        name: 'North bank',
        from: { x: -102, y: 96 },
        surface: 'stone',
        widthMetres: 1.2,
        gradient: 1 / 25,
        stepFree: true,
      },
      {
        id: 'tallyman-west',
        name: 'West bank',
        from: { x: -238, y: 80 },
        surface: 'grass',
        widthMetres: 1.1,
        gradient: 1 / 16,
        stepFree: true,
      },
    ]),
    {
      id: 'lodge-to-tallyman',
      name: 'Lodge to Tallyman Lake',
      line: [LODGE_CAR_PARK, { x: -82, y: 32 }, ring[nearestIndex(ring, { x: -100, y: 42 })]!],
      surface: 'stone',
      widthMetres: 1.8,
      gradient: 1 / 50,
      stepFree: true,
    },
    {
      id: 'brick-lane-path',
      name: 'Brick Lane gate to the lodge',
      line: [{ x: -20, y: 2 }, LODGE_CAR_PARK],
      surface: 'tarmac',
      widthMetres: 3,
      gradient: 1 / 50,
      stepFree: true,
    },
  ];
}

const NOTES = `Dug in 1998 as a canal with manners: both banks alike, an even bottom, no islands to argue over. The paddle in the
middle is switched on for hot nights and stays off on match days unless the organiser says otherwise.

The draw is fair here and the frame is close. Most of the year it is a silvers match with carp at the end of it; in
August it is the other way round.`;
