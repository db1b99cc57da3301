import type { Atlas } from './atlas.ts';
import { type PegMention, pegMention } from './peg-mention.ts';

/** A feature with the pegs that have it, by water in the order of their numbers. */
export interface FeaturePegs {
  readonly id: string;
  readonly name: string;
  readonly meaning: string;
  readonly waters: readonly {
    readonly name: string;
    readonly pegs: readonly PegMention[];
  }[];
}

/** Every feature of the venue's list with its pegs; one that no peg has any more is listed as such. */
export function featurePegs(atlas: Atlas): readonly FeaturePegs[] {
  const { settings, waters } = atlas.venue;
  return settings.features.map(({ id, name, meaning }) => ({
    id,
    name,
    meaning: meaning ?? '',
    waters: waters.flatMap((water) => {
      const pegs = (atlas.pegsByWater.get(water.id) ?? []).filter(({ features }) => features.includes(id));
      if (pegs.length === 0) return [];
      return [{ name: water.name, pegs: pegs.map((peg) => pegMention(atlas, peg)) }];
    }),
  }));
}
