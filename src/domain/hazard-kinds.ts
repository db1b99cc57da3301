/** A kind of hazard, with its meaning in ISO 7010 and what anyone should do about it. */
export interface HazardKind {
  readonly id: string;
  readonly name: string;
  /** Code of the ISO 7010 sign; W001 (general warning) with words where the standard has no own sign. */
  readonly sign: string;
  /** What the angler should do, unless the record says better. */
  readonly advice: string;
  /** A hard rule is never softened by a low score, and closes its peg unless somebody decides otherwise and says why. */
  readonly hardRule: boolean;
}

/** Sign codes as listed by name in open ISO 7010 indexes (facts, section 6). */
export const HAZARD_KINDS: readonly HazardKind[] = [
  {
    id: 'overhead-line',
    name: 'Overhead power line',
    sign: 'W012',
    advice:
      'Do not fish inside the stand-off. Electricity can jump a gap and rods, poles and wet line all conduct. Carry rods low and level.',
    hardRule: true,
  },
  {
    id: 'algae-scum',
    name: 'Blue-green algae scum',
    sign: 'W009',
    advice: 'Assume it is toxic. Keep children and dogs out of the water and do not wet your hands in it.',
    hardRule: true,
  },
  {
    id: 'thin-ice',
    name: 'Ice',
    sign: 'W043',
    advice: 'Stay off the ice. No thickness is safe.',
    hardRule: true,
  },
  {
    id: 'unsafe-platform',
    name: 'Unsafe platform',
    sign: 'W001',
    advice: 'Do not use it and keep others off it: ask for a redraw.',
    hardRule: true,
  },
  {
    id: 'steep-bank',
    name: 'Steep bank',
    sign: 'W008',
    advice: 'Use the steps and carry little at a time.',
    hardRule: false,
  },
  {
    id: 'slippery',
    name: 'Slippery surface',
    sign: 'W011',
    advice: 'Slippery when wet: wear boots with grip.',
    hardRule: false,
  },
  {
    id: 'soft-platform',
    name: 'Soft or damaged platform',
    sign: 'W001',
    advice: 'Test it before you put your weight on it and keep a second person off.',
    hardRule: false,
  },
  {
    id: 'trip',
    name: 'Trip hazard',
    sign: 'W007',
    advice: 'Watch your footing.',
    hardRule: false,
  },
  {
    id: 'deep-margin',
    name: 'Deep water at the edge',
    sign: 'W047',
    advice: 'Deep within a stride of the bank: sit back from the edge and keep children away from it.',
    hardRule: false,
  },
  {
    id: 'unprotected-edge',
    name: 'Unprotected edge',
    sign: 'W051',
    advice: 'Keep back from the edge.',
    hardRule: false,
  },
  {
    id: 'undercut-bank',
    name: 'Undercut bank',
    sign: 'W052',
    advice: 'The edge may give way: stay on the platform.',
    hardRule: false,
  },
  {
    id: 'overhanging-branch',
    name: 'Overhanging branch',
    sign: 'W020',
    advice: 'Mind head and rod; do not pull at a snagged branch.',
    hardRule: false,
  },
  {
    id: 'falling-branch',
    name: 'Dead or falling branches',
    sign: 'W035',
    advice: 'Do not set up below it, and leave in strong wind.',
    hardRule: false,
  },
  {
    id: 'submerged-snag',
    name: 'Submerged object',
    sign: 'W049',
    advice: 'Do not wade. Break off a snagged line.',
    hardRule: false,
  },
  {
    id: 'barbed-wire',
    name: 'Barbed wire',
    sign: 'W033',
    advice: 'Use the gate or stile.',
    hardRule: false,
  },
  {
    id: 'livestock',
    name: 'Livestock',
    sign: 'W034',
    advice: 'Give the animals room and shut the gate.',
    hardRule: false,
  },
  {
    id: 'giant-hogweed',
    name: 'Giant hogweed',
    sign: 'W009',
    advice: 'Do not touch or cut it: sap and sunlight burn the skin. Wash at once and keep it from the sun.',
    hardRule: false,
  },
  {
    id: 'wasps-bees',
    name: 'Wasps or bees',
    sign: 'W001',
    advice: 'Keep away from the nest. Swelling or trouble breathing: ring the emergency number.',
    hardRule: false,
  },
  {
    id: 'ticks',
    name: 'Ticks in long grass',
    sign: 'W009',
    advice: 'Cover your legs and look for ticks afterwards.',
    hardRule: false,
  },
  {
    id: 'rats',
    name: 'Rats (leptospirosis)',
    sign: 'W009',
    advice:
      'Cover cuts and wash your hands before you eat. With a flu-like illness tell the doctor you were at the water.',
    hardRule: false,
  },
  {
    id: 'cold-water',
    name: 'Cold water',
    sign: 'W010',
    advice: 'If you fall in: float on your back until your breathing settles, then call or swim.',
    hardRule: false,
  },
  {
    id: 'other',
    name: 'Hazard',
    sign: 'W001',
    advice: 'Take care.',
    hardRule: false,
  },
];
