import { kitKnown, kitTrouble } from '../domain/rescue-kit.ts';
import { distanceMetres } from '../ground/geodesy/geodesic-between.ts';
import type { Atlas } from './atlas.ts';

/**
 * What is told of throw lines on a page that belongs to no peg: of a water, each with the peg it hangs by, in the order of its
 * pegs; elsewhere where to find the nearest.
 */
export function throwLinesWords(atlas: Atlas, id: string | undefined): string {
  const water = atlas.venue.waters.find((each) => each.id === id);
  if (water === undefined) {
    return 'Every water’s page names its throw lines; each peg’s sheet its nearest, the walk to it and the position to read out.';
  }
  const lines = water.map.places.filter(({ kind }) => kind === 'throw-line');
  if (lines.length === 0) return 'none is on the map: not known.';
  const pegs = atlas.pegsByWater.get(water.id) ?? [];
  const told = lines.map((line) => {
    const trouble = kitTrouble(kitKnown(line, water, atlas.venue.rounds).state);
    const away = pegs.map((peg, order) => ({ order, peg: peg.peg, metres: distanceMetres(line.at, peg.at) }));
    const nearest = away.toSorted((a, b) => a.metres - b.metres)[0];
    const lost = trouble === null ? '' : ` (${trouble})`;
    const by = nearest === undefined ? '' : ` by peg ${nearest.peg}`;
    return { order: nearest?.order ?? 0, words: `${line.name.replace(/^throw line /i, '')}${by}${lost}` };
  });
  const words = told.toSorted((a, b) => a.order - b.order).map((each) => each.words);
  return `${words.join(', ')}. Each peg’s sheet says the walk to its nearest and the position to read out.`;
}
