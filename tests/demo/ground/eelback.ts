import type { Chance } from '../chance.ts';
import { bankPatch, channelControls, pegsAlongBank, roundPatch } from './bank-shapes.ts';
import { circuit, circuitPaths, nearestIndex } from './circuit.ts';
import type { DrawnPath, DrawnWater } from './drawn-water.ts';
import { LODGE_CAR_PARK } from './lodge.ts';
import { bankPlace, nearestAlong, smoothRing } from './ring.ts';
import type { Spot } from './spot.ts';
import { throwLinesAlong } from './throw-lines.ts';

/** Middle of the winding channel from west to east, with half its width. */
const MIDDLE: readonly (readonly [number, number, number])[] = [
  [-205, -128, 9],
  [-172, -104, 11],
  [-140, -104, 12],
  [-112, -128, 12],
  [-84, -156, 14],
  [-46, -166, 21],
  [-12, -150, 13],
  [12, -120, 11],
  [42, -102, 12],
  [72, -116, 15],
  [96, -142, 22],
  [126, -160, 15],
  [156, -152, 12],
  [180, -128, 15],
  [192, -104, 8],
];

/** Eelback: the snaky pit, a channel that doubles back on itself, with three islands. */
export function drawEelback(chance: Chance, pegs: number): DrawnWater {
  const outline = smoothRing(channelControls(MIDDLE), 7);
  const along = (x: number, y: number) => nearestAlong(outline, { x, y });
  const tailReeds = [along(-176, -116), along(-150, -116)] as const;
  const bendReeds = [along(24, -126), along(40, -114)] as const;
  const headReeds = [along(186, -98), along(168, -120)] as const;
  const willows = [along(18, -94), along(-2, -126)] as const;
  const carPark: Spot = { x: -40, y: -112 };
  const islands = [
    { id: 'heron-island', name: 'Heron Island', ring: roundPatch({ x: -47, y: -166 }, 13, 6, 100, chance) },
    { id: 'long-back', name: 'The Long Back', ring: roundPatch({ x: 97, y: -143 }, 14, 6.5, 130, chance) },
    { id: 'thumb', name: 'The Thumb', ring: roundPatch({ x: 177, y: -131 }, 5, 3.6, 40, chance) },
  ];
  return {
    id: 'eelback',
    name: 'Eelback',
    kind: 'snaky pit with islands',
    datum: 'Top of the second board in the outlet monk',
    closeSeason: 'none',
    access:
      'Eelback car park on the north bank. The south bank is reached round the tail, with four steps, or round the head on the level.',
    notesMarkdown: NOTES,
    outline,
    islands,
    areas: [
      { id: 'eelback-tail-reeds', kind: 'reeds', name: 'Tail reeds', ring: bankPatch(outline, ...tailReeds, 3) },
      { id: 'eelback-bend-reeds', kind: 'reeds', name: 'Bend reeds', ring: bankPatch(outline, ...bendReeds, 2.6) },
      { id: 'eelback-head-reeds', kind: 'reeds', name: 'Head reeds', ring: bankPatch(outline, ...headReeds, 2.4) },
      {
        id: 'eelback-lilies',
        kind: 'lilies',
        name: 'Tail lilies',
        ring: roundPatch({ x: -188, y: -110 }, 6, 2.6, 52, chance),
      },
      {
        id: 'long-back-lilies',
        kind: 'lilies',
        name: 'Back lilies',
        ring: roundPatch({ x: 112, y: -164 }, 6, 2, 120, chance),
      },
      { id: 'eelback-willows', kind: 'trees', name: 'Willows', ring: bankPatch(outline, ...willows, -8) },
      {
        id: 'eelback-stump',
        kind: 'snag',
        name: 'Willow stump',
        ring: roundPatch({ x: -1, y: -138 }, 2, 1.4, 30, chance),
      },
    ],
    places: [
      { id: 'eelback-car-park', kind: 'car-park', name: 'Eelback car park', at: carPark },
      {
        id: 'ferry-lane-gate',
        kind: 'gate',
        name: 'Ferry Lane gate',
        at: { x: -70, y: -96 },
        vehicles: true,
        ambulance: true,
        locked: 'always',
        openedBy: 'Match organiser',
        note: 'Combination lock, open on match days.',
      },
      { id: 'stile-gate', kind: 'gate', name: 'Kissing gate, south bank', at: { x: 60, y: -186 }, vehicles: false },
      { id: 'eelback-outlet', kind: 'outlet', name: 'Monk', at: bankPlace(outline, along(194, -96)).at },
      { id: 'eelback-inlet', kind: 'inlet', name: 'Feeder dyke', at: bankPlace(outline, along(-212, -134)).at },
      { id: 'eelback-gauge', kind: 'gauge', name: 'Gauge board', at: bankPlace(outline, along(190, -112)).at },
      { id: 'eelback-toilet', kind: 'toilet', name: 'Toilet cabin', at: { x: -46, y: -104 } },
      ...throwLinesAlong(outline, 'E', 9, (i) => (i === 6 ? '2026-10-04' : '2026-11-14')),
    ],
    paths: eelbackPaths(circuit(outline, 4, 9), carPark),
    overheadLines: [],
    bank: {
      slopes: [2, 3, 3, 4, 5],
      heightMetres: [0.4, 1],
      surfaces: ['grass', 'grass', 'bark', 'bare earth'],
      platforms: ['timber', 'timber', 'pallet and mesh', 'none, grass bank'],
      platformHeightMetres: [0.2, 0.45],
      stepFreeShare: 0.4,
    },
    climate: { degreesOff: 0.2, levelShare: 1 },
    bed: {
      shelf: [
        [0, 0.32],
        [0.8, 0.55],
        [2.2, 0.85],
        [4, 1.25],
        [6, 1.6],
        [8.5, 1.85],
        [16, 1.95],
      ],
      humps: [
        { at: { x: 180, y: -128 }, radiusMetres: 18, riseMetres: -0.5 },
        { at: { x: -190, y: -118 }, radiusMetres: 22, riseMetres: 0.55 },
        { at: { x: 40, y: -102 }, radiusMetres: 14, riseMetres: -0.35 },
      ],
      undulationMetres: 0.07,
      shelfWander: { share: 0.3, metres: 0.1 },
    },
    bays: [{ at: { x: -44, y: -186 }, radiusMetres: 22 }],
    banks: [
      { lastPeg: 17, name: 'South bank' },
      { lastPeg: 20, name: 'The head' },
      { lastPeg: 37, name: 'North bank' },
      { lastPeg: 38, name: 'The tail' },
    ],
    pegsAlong: pegsAlongBank(outline, pegs, [tailReeds, bendReeds, headReeds, willows], chance),
    setBackMetres: 1.2,
  };
}

function eelbackPaths(ring: readonly Spot[], carPark: Spot): DrawnPath[] {
  return [
    ...circuitPaths(ring, [
      {
        id: 'eelback-south-tail',
        name: 'South bank, the tail',
        from: { x: -218, y: -136 },
        surface: 'grass',
        widthMetres: 0.8,
        gradient: 1 / 10,
        steps: 4,
        stepFree: false,
      },
      {
        id: 'eelback-south-heron',
        name: 'South bank, Heron Island',
        from: { x: -110, y: -152 },
        surface: 'grass',
        widthMetres: 0.9,
        gradient: 1 / 12,
        stepFree: true,
      },
      {
        id: 'eelback-south-middle',
        name: 'South bank, the bend',
        from: { x: 4, y: -166 },
        surface: 'bark',
        widthMetres: 1,
        gradient: 1 / 12,
        stepFree: true,
      },
      {
        id: 'eelback-south-back',
        name: 'South bank, the Long Back',
        from: { x: 70, y: -150 },
        surface: 'grass',
        widthMetres: 0.9,
        gradient: 1 / 10,
        stepFree: true,
      },
      {
        id: 'eelback-head',
        name: 'Round the head',
        from: { x: 166, y: -166 },
        surface: 'stone',
        widthMetres: 1.2,
        gradient: 1 / 20,
        stepFree: true,
      },
      {
        id: 'eelback-north-back',
        name: 'North bank, the Long Back',
        from: { x: 190, y: -88 },
        surface: 'stone',
        widthMetres: 1.3,
        gradient: 1 / 25,
        stepFree: true,
      },
      {
        id: 'eelback-north-bend',
        name: 'North bank, the willows',
        from: { x: 60, y: -88 },
        surface: 'bark',
        widthMetres: 0.9,
        gradient: 1 / 9,
        stepFree: true,
      },
      {
        id: 'eelback-north-heron',
        name: 'North bank, Heron Island',
        from: { x: -20, y: -128 },
        surface: 'stone',
        widthMetres: 1.4,
        gradient: 1 / 25,
        stepFree: true,
      },
      {
        id: 'eelback-north-tail',
        name: 'North bank, the tail',
        from: { x: -110, y: -106 },
        surface: 'stone',
        widthMetres: 1.2,
        gradient: 1 / 20,
        stepFree: true,
      },
    ]),
    {
      id: 'eelback-ramp',
      name: 'Car park to the north bank',
      line: [carPark, ring[nearestIndex(ring, carPark)]!],
      surface: 'stone',
      widthMetres: 1.6,
      gradient: 1 / 16,
      stepFree: true,
    },
    {
      id: 'lodge-to-eelback',
      name: 'Lodge to Eelback',
      line: [LODGE_CAR_PARK, { x: -62, y: -20 }, { x: -70, y: -70 }, { x: -70, y: -96 }, carPark],
      surface: 'stone',
      widthMetres: 1.8,
      gradient: 1 / 33,
      stepFree: true,
    },
  ];
}

const NOTES = `A dug channel that winds like its name, nowhere wide: the far bank is a flick of a feeder from most pegs, and the islands
lie within reach of a long pole. A ledge two metres wide runs down both sides; beyond it the track is six feet deep.

The fish travel. Walk it before the draw and look for colour in the water: where the bends are cloudy they have come round
in the night. With a west wind the head by the monk colours first.`;
