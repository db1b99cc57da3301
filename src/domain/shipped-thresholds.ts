import type { Threshold } from './venue.ts';

/**
 * The figures the safety rules rest on, as shipped; a venue replaces one by its id in `venue.md`. `basis` says how far to
 * trust it: `seen` was read on the page named, `second-hand` on a page that quotes it, `memory` is recalled and is never
 * printed as a fact without saying so.
 */
export const SHIPPED_THRESHOLDS: readonly Threshold[] = [
  {
    id: 'overhead-line-stand-off',
    value: 30,
    unit: 'm',
    source: 'Energy Networks Association, angling safety release; the same figure from ESB Networks and NIE Networks',
    basis: 'second-hand',
  },
  {
    id: 'cold-water',
    value: 15,
    unit: 'C',
    source: 'Royal National Lifeboat Institution, cold water shock',
    basis: 'second-hand',
  },
  {
    id: 'cold-shock-passes',
    value: 90,
    unit: 's',
    source: 'Royal National Lifeboat Institution, release of April 2018 (60 to 90 s)',
    edition: '2018',
    basis: 'seen',
  },
  {
    id: 'warm-water-fish-care',
    value: 21,
    unit: 'C',
    source: 'Environment Agency advice in hot weather, quoted in the angling press',
    edition: '2020',
    basis: 'second-hand',
  },
  {
    id: 'steep-bank',
    value: 18.4,
    unit: 'deg',
    source:
      'Local-authority drainage design guides: basin sides of 1 in 3 at most. A design figure, not a rule of angling',
    edition: '2018',
    basis: 'seen',
  },
  {
    id: 'sloping-bank',
    value: 14,
    unit: 'deg',
    source:
      'Scottish Environment Protection Agency, Ponds, Pools and Lochans, section 7.7: sides no steeper than 1 in 4. A design figure, not a rule of angling',
    basis: 'seen',
  },
  {
    id: 'deep-margin',
    value: 0.6,
    unit: 'm',
    source:
      'Local-authority drainage design guides: 600 mm of stored water; within 1 m of the edge is this project’s choice',
    edition: '2018',
    basis: 'seen',
  },
  {
    id: 'rescue-kit-distance',
    value: 50,
    unit: 'm',
    source: 'Royal Society for the Prevention of Accidents, questions on rescue equipment: about 100 m apart',
    edition: '2010',
    basis: 'seen',
  },
  {
    id: 'gust-under-trees',
    value: 20.1,
    unit: 'm/s',
    source: 'National Trust, Hatfield Forest high-winds policy: closed at forecast gusts of 45 mph',
    basis: 'seen',
  },
  {
    id: 'lightning-wait',
    value: 30,
    unit: 'min',
    source: 'The 30/30 rule as given by the Ramblers: wait 30 minutes after the last thunder',
    basis: 'seen',
  },
  {
    id: 'leptospirosis-watch',
    value: 30,
    unit: 'days',
    source: 'Incubation of 2 to 30 days in union and club pages; other pages give 3 to 21',
    basis: 'second-hand',
  },
  {
    id: 'accessible-rail-height',
    value: 0.865,
    unit: 'm',
    source: 'ADA Standards for Accessible Design 2010, section 1005.2, as given in a state grant page',
    edition: '2010',
    basis: 'second-hand',
  },
  {
    id: 'accessible-turning-space',
    value: 1.525,
    unit: 'm',
    source: 'ADA Standards for Accessible Design 2010, sections 1005.5 and 304',
    edition: '2010',
    basis: 'seen',
  },
  {
    id: 'accessible-path-width',
    value: 0.915,
    unit: 'm',
    source: 'Architectural Barriers Act guidelines for outdoor developed areas, 1017.3',
    basis: 'seen',
  },
  {
    id: 'accessible-path-gradient',
    value: 0.1,
    unit: 'rise/run',
    source:
      'Architectural Barriers Act guidelines for outdoor developed areas, 1016.7.1: the way to a facility never steeper than 1 in 10',
    basis: 'seen',
  },
];

/** The shipped thresholds with a venue's own in place of those of the same id, and its further ones behind. */
export function withShippedThresholds(own: readonly Threshold[]): readonly Threshold[] {
  const ownById = new Map(own.map((threshold) => [threshold.id, threshold]));
  const shippedIds = new Set(SHIPPED_THRESHOLDS.map(({ id }) => id));
  return [
    ...SHIPPED_THRESHOLDS.map((shipped) => ownById.get(shipped.id) ?? shipped),
    ...own.filter(({ id }) => !shippedIds.has(id)),
  ];
}
