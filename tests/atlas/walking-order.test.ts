import { expect, test } from 'vitest';
import { roundOfPegs, roundOfWater } from '../../src/atlas/walking-order.ts';
import { examplePeg, exampleVenue } from '../domain/example-venue.ts';
import { exampleAtlas } from './example-atlas.ts';

const at = (metresEast: number) => ({ lat: 52.75, lng: -0.05 + metresEast / 67_500 });

/** Three pegs along a straight bank, east of the car park by so many metres. */
function atlasOf(...metres: readonly [number, number, number]) {
  const [water] = exampleVenue().waters;
  const carPark = { id: 'car', kind: 'car-park' as const, name: 'Mill car park', at: at(-10) };
  const pegs = metres.map((east, i) => examplePeg(`${i + 1}`, { at: at(east) }));
  return exampleAtlas({ venue: { pegs, waters: [{ ...water!, map: { ...water!.map, places: [carPark] } }] } });
}

const order = (round: ReturnType<typeof roundOfWater>) => round.stops.map(({ peg }) => peg);

test('the round of a water and the walk past the same pegs by their keys are one', () => {
  const atlas = atlasOf(60, 0, 30);
  const water = roundOfWater(atlas, 'pit');
  const walk = roundOfPegs(atlas, ['pit/1', 'pit/2', 'pit/3']);
  expect(walk.lengthMetres).toBe(water.lengthMetres);
  expect(order(walk)).toEqual(order(water).map((peg) => `pit/${peg}`));
});

test('a walk past some pegs is not that past others, nor that of another reading of the folder', () => {
  const atlas = atlasOf(60, 0, 30);
  expect(order(roundOfPegs(atlas, ['pit/3', 'pit/2']))).toHaveLength(2);
  expect(roundOfPegs(atlas, ['pit/2']).lengthMetres).toBeLessThan(roundOfPegs(atlas, ['pit/1']).lengthMetres);
  const mended = atlasOf(60, 0, 300);
  expect(roundOfWater(mended, 'pit').lengthMetres).toBeGreaterThan(roundOfWater(atlas, 'pit').lengthMetres);
});

test('is worked out once for all pages that ask for it', () => {
  const atlas = atlasOf(60, 0, 30);
  expect(roundOfPegs(atlas, ['pit/1', 'pit/3'])).toBe(roundOfPegs(atlas, ['pit/1', 'pit/3']));
});
