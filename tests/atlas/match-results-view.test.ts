import { expect, test } from 'vitest';
import { makeAtlas } from '../../src/atlas/atlas.ts';
import { matchResultsView } from '../../src/atlas/match-results-view.ts';
import { NO_RATINGS } from '../../src/atlas/no-ratings.ts';
import { USUAL_SCORING } from '../../src/domain/match.ts';
import { surveyVenue } from '../../src/ground/survey-venue.ts';
import { smallCheckedVenue } from '../content/small-venue.ts';

const MATCH = `---
name: May cup
date: 2026-05-02
waters: [mill-pond]
entries: 3
places: 1
status: fished
pegs:
  A: [mill-pond/1, mill-pond/2, mill-pond/10]
---
`;

test('tells the results of a match that is in the log by peg, and nothing of who sat there', () => {
  const venue = smallCheckedVenue({ 'matches/2026-05-02-may-cup.md': MATCH });
  const atlas = makeAtlas(venue, surveyVenue(venue), NO_RATINGS);
  const [match] = venue.matches!;
  expect(match!.scoring).toEqual(USUAL_SCORING);
  const view = matchResultsView(atlas, match!)!;
  expect(view.words).toBe('3 pegs in the log, 2 bags weighed, 33 lb 12 oz in all.');
  expect(
    view.rows.map(({ place, peg, weight, section, points, won }) => [place, peg.peg, weight, section, points, won]),
  ).toEqual([
    ['1', '1', '23 lb 8 oz', 'A 1', '1', 'frames'],
    ['2', '2', '10 lb 4 oz', 'A 2', '2', 'section, by default'],
    ['3', '10', 'DNW', 'A 3', '3', ''],
  ]);
  expect(JSON.stringify(view)).not.toMatch(/a-7f3k9q/);
});

test('has none before the match is in the log', () => {
  const venue = smallCheckedVenue({
    'matches/2026-12-06-pairs.md': MATCH.replace('2026-05-02', '2026-12-06').replace('fished', 'planned'),
  });
  const atlas = makeAtlas(venue, surveyVenue(venue), NO_RATINGS);
  expect(matchResultsView(atlas, venue.matches![0]!)).toBeNull();
});
