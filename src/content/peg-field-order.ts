import type { KeyOrder } from './yaml-edit/edit-yaml.ts';

/** Keys of a peg record in the order of `format.md`, so that a field added by a command stands where a writer looks for it. */
const ORDERS: Readonly<Record<string, readonly string[]>> = {
  '': [
    'peg',
    'water',
    'position',
    'facing',
    'where',
    'features',
    'status',
    'status-reason',
    'status-since',
    'platform',
    'bank',
    'clearance',
    'access',
    'reach',
    'margin-depth',
    'limits',
    'measured-line-distance',
    'hazards',
    'photos',
  ],
  platform: ['kind', 'width', 'length', 'height', 'condition', 'rail-height', 'edge-protection', 'measured-at'],
  clearance: ['clear-width', 'lowest-branch', 'path-width', 'measured-on'],
  'measured-line-distance': ['distance', 'measured-on', 'method', 'bearing'],
  hazards: [
    'kind',
    'place',
    'action',
    'control',
    'severity',
    'likelihood',
    'severity-after',
    'likelihood-after',
    'found-on',
    'checked-on',
    'cleared-on',
    'round',
    'photo',
    'line',
    'distance',
    'bearing',
    'kept-open',
  ],
  photos: ['file', 'alt', 'credit'],
};

/** The usual order of the keys of one map of a peg record; empty where it has none. */
export const PEG_FIELD_ORDER: KeyOrder = (path) => ORDERS[path.join('.')] ?? [];
