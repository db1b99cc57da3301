import { expect, test } from 'vitest';
import { neighboursOf } from '../../src/ground/neighbours.ts';
import { pegStand } from '../../src/ground/peg-stand.ts';
import { waterPlane } from '../../src/ground/water-plane.ts';
import { examplePeg } from '../domain/example-venue.ts';
import { pondMap, rectangle, spot } from './example-pond.ts';

const REACH = { poleMetres: 13, castMetres: 30, sectorDegrees: 90 };
const isle = { id: 'isle', ring: rectangle(-20, -5, 20, 5) };

function neighbours(places: Readonly<Record<string, readonly [number, number]>>, outline = pondMap().outline) {
  const pond = waterPlane(pondMap({ outline, islands: [isle] }));
  const pegs = Object.entries(places).map(([name, [x, y]]) => examplePeg(name, { at: spot(x, y) }));
  const stands = new Map(pegs.map((peg) => [`pit/${peg.peg}`, pegStand(peg, pond, REACH)]));
  const found = neighboursOf(pegs, stands, pond);
  return Object.fromEntries(
    [...found].map(([key, both]) => [
      key.slice(4),
      both.map(({ peg, side, gapMetres }) => `${side} ${peg.slice(4)} ${Math.round(gapMetres)}`).join(', '),
    ]),
  );
}

const SOUTH_BANK = { a: [-30, -31], b: [-10, -31], c: [20, -31] } as const;

test('are the next pegs on either hand of an angler who looks at the water, with the way along the bank', () => {
  // Looking north from the south bank, west is on the left.
  expect(neighbours(SOUTH_BANK)).toEqual({
    a: 'left c 270, right b 20',
    b: 'left a 20, right c 30',
    c: 'left b 30, right a 270',
  });
});

test('do not depend on the way round the outline was drawn', () => {
  expect(neighbours(SOUTH_BANK, [...pondMap().outline].reverse())).toEqual(neighbours(SOUTH_BANK));
});

test('on an island are pegs of that island', () => {
  // Looking south from the island's south bank, west is on the right.
  expect(neighbours({ ...SOUTH_BANK, i: [-10, -4], j: [10, -4] })).toMatchObject({
    i: 'left j 20, right j 80',
    j: 'left i 80, right i 20',
    b: 'left a 20, right c 30',
  });
});

test('of a peg alone on its bank are none', () => {
  expect(neighbours({ a: [0, -31] })).toEqual({ a: '' });
});

test('at one spot are at no distance', () => {
  expect(neighbours({ a: [0, -31], b: [0, -31] }).a).toContain(' b 0');
});
