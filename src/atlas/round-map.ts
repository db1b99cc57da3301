import type { Atlas } from './atlas.ts';
import { mapSvg } from './drawing/map-svg.ts';
import type { Point } from './drawing/simplify-line.ts';
import { roundOfWater } from './walking-order.ts';
import { waterMap } from './water-map.ts';

/** The map of a water with the way of the bank round drawn from peg to peg. */
export function roundMapSvg(atlas: Atlas, waterId: string): string {
  const drawing = waterMap(atlas, waterId);
  const { stops, from } = roundOfWater(atlas, waterId);
  const marks = new Map(drawing.pegs.map(({ peg, x, y }): [string, Point] => [peg, [x, y]]));
  const start = drawing.places.find(({ kind, name }) => kind === 'car-park' && name === from?.name);
  const ends: Point[] = start === undefined ? [] : [[start.x, start.y]];
  const pegs = stops.flatMap(({ peg }) => {
    const mark = marks.get(peg);
    return mark === undefined ? [] : [mark];
  });
  return mapSvg({
    ...drawing,
    route: [...ends, ...pegs, ...ends],
    label: `${drawing.label}, joined in walking order`,
  });
}
