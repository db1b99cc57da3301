import type { Feature } from '../../../src/domain/venue.ts';

/** The feature vocabulary of generated venues. */
export const FEATURES: readonly Feature[] = [
  { id: 'corner', name: 'Corner', meaning: 'Two banks meet within a few yards of the peg.' },
  {
    id: 'margin',
    name: 'Fishable margin',
    meaning: 'A clear strip of shallow water tight to the bank, left or right, that can be fed and fished.',
  },
  { id: 'point', name: 'Point', meaning: 'The bank juts out; there is water on both sides of the peg.' },
  { id: 'bay', name: 'Bay', meaning: 'A recess of the bank with water of its own.' },
  { id: 'island', name: 'Island', meaning: 'An island within reach of pole or a short chuck.' },
  { id: 'open-water', name: 'Open water', meaning: 'Nothing within reach but water: no bank, bed or island in front.' },
  { id: 'reeds', name: 'Reeds', meaning: 'A bed of reeds within a pole’s top kit.' },
  { id: 'lilies', name: 'Lilies', meaning: 'Lilies in front within pole reach.' },
  { id: 'overhang', name: 'Overhanging trees', meaning: 'Branches over the water or the peg.' },
  { id: 'inlet', name: 'Inlet', meaning: 'Water runs in close by.' },
  { id: 'aerator', name: 'Aerator', meaning: 'The aerator is within casting range.' },
  { id: 'deep-water', name: 'Deep water', meaning: 'At 6 m among the deepest third of the water’s pegs.' },
  { id: 'near-shelf', name: 'Near shelf', meaning: 'A distinct ledge within reach of a top kit and two sections.' },
];
