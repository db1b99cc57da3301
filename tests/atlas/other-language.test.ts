import { expect, it } from 'vitest';
import type { Atlas } from '../../src/atlas/atlas.ts';
import { homePage } from '../../src/atlas/home-page.ts';
import { pegSheet } from '../../src/atlas/peg-sheet.ts';
import { exampleAtlas } from './example-atlas.ts';

const english = exampleAtlas();
const welsh: Atlas = {
  ...english,
  venue: { ...english.venue, settings: { ...english.venue.settings, language: 'cy' } },
};

it('says of a peg in Welsh what it says in English', () => {
  const [here, there] = [pegSheet(english, 'pit/1'), pegSheet(welsh, 'pit/1')];
  expect([here.facing, there.facing]).toEqual([
    expect.stringMatching(/^Faces /),
    here.facing.replace('Faces', 'Yn wynebu'),
  ]);
  expect(there.wind.map(({ fetch }) => fetch.replace(' i ', ' to '))).toEqual(here.wind.map(({ fetch }) => fetch));
  expect(homePage(welsh).behind).toMatch(/^1 peg ar un dŵr/);
});

it('says what keeps an angler safe in English in every guide: nobody has checked it in Welsh', () => {
  const [here, there] = [pegSheet(english, 'pit/1'), pegSheet(welsh, 'pit/1')];
  expect(there.safety).toEqual(here.safety);
  expect(there.standing).toEqual(here.standing);
  expect(there.emergency).toEqual(here.emergency);
  expect(there.notices).toEqual(here.notices);
});
