import type { Hazard } from '../../../src/domain/hazard.ts';
import type { PegKey } from '../../../src/domain/peg.ts';

/** Hazards of the demo venue that no figure tells: found by someone walking past. */
export const PLACED_HAZARDS: Readonly<Record<PegKey, readonly Hazard[]>> = {
  'eelback/11': [
    {
      kind: 'soft-platform',
      place: 'left-hand front post',
      action: 'Try it with one foot first; keep to the right-hand half and keep a second person off.',
      control: 'Post strapped to a stake; new frame ordered',
      severity: 3,
      likelihood: 4,
      severityAfter: 3,
      likelihoodAfter: 3,
      foundOn: '2026-06-13',
      checkedOn: '2026-09-19',
      round: 'b8sk',
    },
  ],
  'eelback/28': [
    {
      kind: 'overhanging-branch',
      place: 'above the left of the seat, 1.9 m up',
      action: 'Fish underarm; do not pull at a branch that has your rig.',
      severity: 2,
      likelihood: 4,
      foundOn: '2025-06-14',
      checkedOn: '2026-11-14',
      round: 't5rn',
    },
  ],
  'eelback/15': [
    {
      kind: 'barbed-wire',
      place: 'field side of the path, under the nettles',
      action: 'Use the kissing gate; do not step back off the path.',
      severity: 2,
      likelihood: 3,
      foundOn: '2024-06-15',
      checkedOn: '2026-11-14',
      round: 'p9k2',
    },
  ],
  'eelback/16': [
    {
      kind: 'livestock',
      place: 'field behind the path',
      severity: 3,
      likelihood: 2,
      foundOn: '2024-02-24',
      checkedOn: '2026-11-14',
      round: 'w4tz',
    },
  ],
  'eelback/6': [
    {
      kind: 'rats',
      place: 'run below the hedge',
      severity: 4,
      likelihood: 2,
      control: 'Bait left on the bank is taken up after every match',
      severityAfter: 4,
      likelihoodAfter: 1,
      foundOn: '2025-09-20',
      checkedOn: '2026-11-14',
      round: 'c2yf',
    },
  ],
  'eelback/9': [
    {
      kind: 'undercut-bank',
      place: 'grass edge right of the platform, 3 m long',
      action: 'Stay on the platform and land fish to the left of it.',
      severity: 3,
      likelihood: 3,
      foundOn: '2026-02-21',
      checkedOn: '2026-09-19',
      round: 'z4gu',
    },
  ],
  'eelback/10': [
    {
      kind: 'submerged-snag',
      place: 'willow stump, two rods out to the left',
      severity: 2,
      likelihood: 3,
      foundOn: '2024-09-21',
      checkedOn: '2026-09-19',
      round: 'd7mc',
    },
  ],
  'eelback/20': [
    {
      kind: 'other',
      place: 'grid of the monk',
      action: 'Keep off the grid and its frame: rusted bars, and the water draws under them.',
      severity: 4,
      likelihood: 2,
      foundOn: '2024-11-30',
      checkedOn: '2026-11-14',
      round: 'h3xe',
    },
  ],
  'eelback/37': [
    {
      kind: 'giant-hogweed',
      place: 'bank behind the path',
      severity: 4,
      likelihood: 3,
      control: 'Dug out by a contractor in spring 2026; new shoots marked with canes',
      severityAfter: 4,
      likelihoodAfter: 2,
      foundOn: '2025-06-14',
      checkedOn: '2026-11-14',
      round: 't5rn',
    },
  ],
  'eelback/1': [
    {
      kind: 'ticks',
      place: 'long grass between path and water',
      severity: 3,
      likelihood: 2,
      foundOn: '2026-06-13',
      checkedOn: '2026-06-13',
      round: 'b8sk',
    },
  ],
  'kiln-pool/4': [
    {
      kind: 'submerged-snag',
      place: 'clay trucks, 28 m out at one o’clock',
      severity: 1,
      likelihood: 4,
      foundOn: '2024-02-24',
      checkedOn: '2026-11-14',
      round: 'w4tz',
    },
  ],
  'kiln-pool/22': [
    {
      kind: 'algae-scum',
      place: 'windward edge of the lilies',
      severity: 4,
      likelihood: 3,
      foundOn: '2025-08-11',
      checkedOn: '2025-09-20',
      clearedOn: '2025-09-20',
      clearedBy: 'Bailiff',
      clearedWhy: 'No scum seen on ten walks running',
    },
  ],
  'kiln-pool/27': [
    {
      kind: 'trip',
      place: 'mooring ring in the path',
      action: 'Painted white; step over it.',
      control: 'Painted white',
      severity: 2,
      likelihood: 3,
      severityAfter: 2,
      likelihoodAfter: 2,
      foundOn: '2024-11-30',
      checkedOn: '2026-09-19',
      round: 'h3xe',
    },
  ],
  'tallyman-lake/18': [
    {
      kind: 'falling-branch',
      place: 'second poplar behind the peg',
      action: 'Do not set up here in a strong wind; leave when the trees begin to roar.',
      control: 'Tree surgeon booked after leaf fall',
      severity: 5,
      likelihood: 2,
      severityAfter: 5,
      likelihoodAfter: 1,
      foundOn: '2026-09-19',
      checkedOn: '2026-11-14',
      round: 'e3pw',
    },
  ],
  'tallyman-lake/19': [
    {
      kind: 'wasps-bees',
      place: 'foot of the hedge',
      severity: 3,
      likelihood: 4,
      foundOn: '2026-08-16',
      checkedOn: '2026-09-19',
      clearedOn: '2026-10-05',
    },
  ],
  'tallyman-lake/13': [
    {
      kind: 'slippery',
      place: 'grass between path and deck',
      severity: 2,
      likelihood: 3,
      foundOn: '2024-11-30',
      checkedOn: '2026-11-14',
      round: 'h3xe',
    },
  ],
};

/** Platforms whose condition someone found worse than the last walk had it. */
export const PLATFORM_CONDITIONS: Readonly<Record<PegKey, string>> = {
  'eelback/11': 'left-hand front post moves',
};
