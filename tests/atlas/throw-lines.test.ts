import { expect, test } from 'vitest';
import { throwLinesWords } from '../../src/atlas/throw-lines.ts';
import type { MapPlace } from '../../src/domain/map.ts';
import { examplePeg, exampleVenue } from '../domain/example-venue.ts';
import { exampleAtlas } from './example-atlas.ts';

const line = (id: string, lat: number): MapPlace => ({
  id,
  kind: 'throw-line',
  name: `Throw line ${id}`,
  at: { lat, lng: -0.05 },
});

const MISSING = {
  kind: 'missing-kit',
  place: 'the post',
  severity: 5,
  likelihood: 3,
  mappedAs: 'B',
  foundOn: '2026-11-02',
} as const;

function wordsOf(places: readonly MapPlace[], water: string | undefined): string {
  const [pit] = exampleVenue().waters;
  const pegs = [
    examplePeg('1', { at: { lat: 52.75, lng: -0.05 } }),
    examplePeg('2', { at: { lat: 52.751, lng: -0.05 } }),
  ];
  return throwLinesWords(
    exampleAtlas({ venue: { waters: [{ ...pit!, hazards: [MISSING], map: { ...pit!.map, places } }], pegs } }),
    water,
  );
}

test('names each throw line of a water by the peg it hangs by, and one that was missing', () => {
  expect(wordsOf([line('B', 52.7509), line('A', 52.7501)], 'pit')).toMatch(
    /^A by peg 1, B by peg 2 \(missing when last looked at\)\. Each peg’s sheet/,
  );
});

test('never says that none is needed: not known where none is on the map, and where to look elsewhere', () => {
  expect(wordsOf([], 'pit')).toContain('not known');
  expect(wordsOf([line('A', 52.7501)], undefined)).toMatch(/^Every water’s page names its throw lines/);
});
