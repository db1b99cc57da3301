import type { SafetySourceId } from './safety-sources.ts';

/** A kind of hazard, with its meaning in ISO 7010 and what anyone should do about it. */
export interface HazardKind {
  readonly id: string;
  readonly name: string;
  /** Code of the ISO 7010 sign; W001 (general warning) with words where the standard has no own sign. */
  readonly sign: string;
  /** What the angler should do, unless the record says better: the one home of these words. Empty where only the record knows. */
  readonly advice: string;
  /** What the advice rests on. */
  readonly source: SafetySourceId;
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
    source: 'ena-release',
    hardRule: true,
  },
  {
    id: 'algae-scum',
    name: 'Blue-green algae scum',
    sign: 'W009',
    advice: 'Treat all scum as poisonous: nobody can tell by eye. Children and dogs out of the water, hands out of it.',
    source: 'algae-agency',
    hardRule: true,
  },
  {
    id: 'thin-ice',
    name: 'Ice',
    sign: 'W043',
    advice: 'Stay off the ice. No thickness is safe.',
    source: 'army-engineers-ice',
    hardRule: true,
  },
  {
    id: 'unsafe-platform',
    name: 'Unsafe platform',
    sign: 'W001',
    advice: 'Do not use it and keep others off it: ask for a redraw.',
    source: 'practice',
    hardRule: true,
  },
  {
    id: 'steep-bank',
    name: 'Steep bank',
    sign: 'W008',
    advice: 'Use the steps and carry little at a time.',
    source: 'practice',
    hardRule: false,
  },
  {
    id: 'slippery',
    name: 'Slippery surface',
    sign: 'W011',
    advice: 'Slippery when wet: wear boots with grip.',
    source: 'practice',
    hardRule: false,
  },
  {
    id: 'soft-platform',
    name: 'Soft or damaged platform',
    sign: 'W001',
    advice: 'Do not use it: ask for a redraw.',
    source: 'practice',
    hardRule: false,
  },
  {
    id: 'trip',
    name: 'Trip hazard',
    sign: 'W007',
    advice: 'Watch your footing.',
    source: 'practice',
    hardRule: false,
  },
  {
    id: 'deep-margin',
    name: 'Deep water at the edge',
    sign: 'W047',
    advice: 'Deep within a stride of the bank: sit back from the edge and keep children away from it.',
    source: 'practice',
    hardRule: false,
  },
  {
    id: 'unprotected-edge',
    name: 'Unprotected edge',
    sign: 'W051',
    advice: 'Keep back from the edge.',
    source: 'practice',
    hardRule: false,
  },
  {
    id: 'undercut-bank',
    name: 'Undercut bank',
    sign: 'W052',
    advice: 'The edge may give way: keep back from it.',
    source: 'practice',
    hardRule: false,
  },
  {
    id: 'overhanging-branch',
    name: 'Overhanging branch',
    sign: 'W020',
    advice: 'Mind head and rod; do not pull at a snagged branch.',
    source: 'practice',
    hardRule: false,
  },
  {
    id: 'falling-branch',
    name: 'Dead or falling branches',
    sign: 'W035',
    advice: 'Do not set up below it, and leave in strong wind.',
    source: 'high-winds',
    hardRule: false,
  },
  {
    id: 'submerged-snag',
    name: 'Submerged object',
    sign: 'W049',
    advice: 'Do not wade. Break off a snagged line.',
    source: 'practice',
    hardRule: false,
  },
  {
    id: 'barbed-wire',
    name: 'Barbed wire',
    sign: 'W033',
    advice: 'Use the gate or stile.',
    source: 'practice',
    hardRule: false,
  },
  {
    id: 'livestock',
    name: 'Livestock',
    sign: 'W034',
    advice: 'Give the animals room and shut the gate.',
    source: 'practice',
    hardRule: false,
  },
  {
    id: 'giant-hogweed',
    name: 'Giant hogweed',
    sign: 'W009',
    advice: 'Do not touch or cut it: sap and sunlight burn the skin. Wash at once and keep it from the sun.',
    source: 'hogweed',
    hardRule: false,
  },
  {
    id: 'wasps-bees',
    name: 'Wasps or bees',
    sign: 'W001',
    advice: 'Keep away from the nest. Swelling or trouble breathing: call the emergency number.',
    source: 'stings',
    hardRule: false,
  },
  {
    id: 'ticks',
    name: 'Ticks in long grass',
    sign: 'W009',
    advice: 'Cover your legs and look for ticks afterwards.',
    source: 'ticks',
    hardRule: false,
  },
  {
    id: 'rats',
    name: 'Rats (leptospirosis)',
    sign: 'W009',
    advice:
      'Cover cuts and wash your hands before you eat. With a flu-like illness tell the doctor you were at the water.',
    source: 'leptospirosis',
    hardRule: false,
  },
  {
    id: 'cold-water',
    name: 'Cold water',
    sign: 'W010',
    advice: 'If you fall in: float on your back until your breathing settles, then call or swim.',
    source: 'cold-shock',
    hardRule: false,
  },
  {
    id: 'electric-fence',
    name: 'Electric fence',
    sign: 'W012',
    advice: 'Treat every fence wire as live: keep rods, poles, nets and wet line off it and use the gate.',
    source: 'practice',
    hardRule: false,
  },
  {
    id: 'deep-silt',
    name: 'Deep silt',
    sign: 'W001',
    advice: 'Do not wade, and keep off bare mud at low water: it can hold a person fast.',
    source: 'practice',
    hardRule: false,
  },
  {
    id: 'sluice-current',
    name: 'Sluice, pipe or current',
    sign: 'W001',
    advice: 'Keep away from sluices, pipes and boards: the flow can start without warning. Never reach or wade in.',
    source: 'practice',
    hardRule: false,
  },
  {
    id: 'flood',
    name: 'Flood water',
    sign: 'W001',
    advice: 'Do not fish a flooded bank: its edge cannot be seen. Leave while the way out is dry.',
    source: 'practice',
    hardRule: false,
  },
  {
    id: 'vehicles',
    name: 'Vehicles on the way',
    sign: 'W001',
    advice: 'Walking pace, eyes up: people, children and barrows are on the track.',
    source: 'practice',
    hardRule: false,
  },
  {
    id: 'other',
    name: 'Other hazard',
    sign: 'W001',
    advice: '',
    source: 'practice',
    hardRule: false,
  },
];
