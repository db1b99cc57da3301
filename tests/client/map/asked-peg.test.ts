import { expect, it } from 'vitest';
import { askedPeg } from '../../../src/client/map/asked-peg.ts';

it.each([
  ['#map-14a', '14a'],
  ['#map-%C3%A4', 'ä'],
  ['#map', null],
  ['#map-%', null],
  ['', null],
])('reads %s as peg %s', (hash, peg) => {
  expect(askedPeg(hash)).toBe(peg);
});
