import type { PegOrder } from '../domain/peg-order.ts';
import type { Atlas } from './atlas.ts';

/** What the reader may order the pegs of a water by, and choose among them by. */
export interface PegChoices {
  readonly orders: readonly { readonly id: PegOrder; readonly name: string }[];
  /** Features that some peg of the water has. */
  readonly features: readonly { readonly id: string; readonly name: string }[];
}

/** The orders and features that a water's table of pegs offers; a bag that nothing rates is no order. */
export function pegChoices(atlas: Atlas, water: string): PegChoices {
  const { bagParts, features } = atlas.venue.settings;
  const there = new Set(atlas.pegsByWater.get(water)?.flatMap((peg) => peg.features) ?? []);
  const rated = new Set(
    atlas.ratings.bags.filter(({ pegMonths }) => pegMonths.some((each) => each.water === water)).map(({ bag }) => bag),
  );
  const bags = [{ id: 'total', name: 'total bag' }, ...bagParts].filter(({ id }) => rated.has(id));
  return {
    orders: [
      { id: 'number', name: 'number on the post' },
      ...bags.map(({ id, name }) => ({ id: `worth-${id}` as const, name: `worth, ${name.toLowerCase()}` })),
      { id: 'depth', name: 'depth at 11 m' },
      { id: 'walk', name: 'walk' },
      { id: 'step-free', name: 'step-free first' },
    ],
    features: features.filter(({ id }) => there.has(id)).map(({ id, name }) => ({ id, name })),
  };
}
