import fc from 'fast-check';
import { expect, test } from 'vitest';
import { makeAtlas } from '../../src/atlas/atlas.ts';
import { type MatchDayData, matchDayJson } from '../../src/atlas/match-day-page.ts';
import { matchPage } from '../../src/atlas/match-page.ts';
import { NO_RATINGS } from '../../src/atlas/no-ratings.ts';
import { factsOfPeg } from '../../src/atlas/peg-verdicts.ts';
import type { Match } from '../../src/domain/match.ts';
import { pegKey } from '../../src/domain/peg.ts';
import { pegVerdict } from '../../src/domain/peg-verdict.ts';
import type { Venue } from '../../src/domain/venue.ts';
import { surveyVenue } from '../../src/ground/survey-venue.ts';
import { exampleMatch } from '../domain/example-match.ts';
import { READING_DAYS, venues } from './verdict/generated-venue.ts';

/** A match on all pegs but the last of a water, as somebody might have written it by hand. */
function matchOn({ pegs }: Venue, day: Match['day'], status: Match['status']): Match {
  const water = pegs[0]!.water;
  const keys = pegs.filter((peg) => peg.water === water).map(({ peg }) => pegKey(water, peg));
  return exampleMatch({
    id: `${day}-any`,
    day,
    waters: [water],
    status,
    plan: [{ name: 'A', pegs: keys.slice(0, -1) }],
  });
}

test('no peg that is closed on the day of a match is in the bag, on a ticket or a spare one, whatever closes it', () => {
  const seen = { closed: 0, open: 0 };
  fc.assert(
    fc.property(venues, fc.constantFrom(...READING_DAYS), (venue, day) => {
      const atlas = makeAtlas(venue, surveyVenue(venue), NO_RATINGS);
      const match = matchOn(venue, day, 'planned');
      const page = matchPage(atlas, match, []);
      const data = JSON.parse(matchDayJson(atlas, match, page)) as MatchDayData;
      const mayBeFished = (key: string) =>
        pegVerdict(factsOfPeg(atlas, atlas.pegsByKey.get(key)!), day).state !== 'closed';
      const open = match.plan[0]!.pegs.filter(mayBeFished);
      expect(page.bag.map(({ key }) => key)).toEqual(open);
      const inBag = data.sections.flatMap(({ pegs }) => pegs).filter(({ closed }) => closed === '');
      expect(inBag.map(({ key }) => key)).toEqual(open);
      expect(data.spare.every(({ key }) => mayBeFished(key))).toBe(true);
      expect(page.closedWords === '').toBe(open.length === match.plan[0]!.pegs.length);
      seen.open += open.length;
      seen.closed += match.plan[0]!.pegs.length - open.length;
      // What was fished is history: nothing is left out of it for what closed since.
      expect(matchPage(atlas, matchOn(venue, day, 'fished'), []).closedWords).toBe('');
    }),
    { numRuns: 60 },
  );
  expect(seen.closed).toBeGreaterThan(20);
  expect(seen.open).toBeGreaterThan(10);
});
