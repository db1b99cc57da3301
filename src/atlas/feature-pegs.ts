import type { Atlas } from './atlas.ts';
import { type PegStanding, standingOfPeg } from './peg-verdicts.ts';
import { pegLink } from './site-link.ts';

/** A feature with the pegs that have it, by water in the order of their numbers. */
export interface FeaturePegs {
  readonly id: string;
  readonly name: string;
  readonly meaning: string;
  readonly waters: readonly {
    readonly name: string;
    readonly pegs: readonly { readonly peg: string; readonly href: string; readonly standing: PegStanding }[];
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
      return [
        {
          name: water.name,
          pegs: pegs.map((peg) => ({
            peg: peg.peg,
            href: pegLink(peg.water, peg.peg),
            standing: standingOfPeg(atlas, peg),
          })),
        },
      ];
    }),
  }));
}
