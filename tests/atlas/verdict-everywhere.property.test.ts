import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makeAtlas } from '../../src/atlas/atlas.ts';
import { pegSheet } from '../../src/atlas/peg-sheet.ts';
import { factsOfPeg } from '../../src/atlas/peg-verdicts.ts';
import { waterPage } from '../../src/atlas/water-page.ts';
import { pegKey } from '../../src/domain/peg.ts';
import { pegVerdict } from '../../src/domain/peg-verdict.ts';
import { surveyVenue } from '../../src/ground/survey-venue.ts';
import { EMPTY_RATINGS } from './example-atlas.ts';
import { GUIDE_DAY, READING_DAYS, venues } from './verdict/generated-venue.ts';
import { closedOnLocator, contradictions, placesOf } from './verdict/places.ts';

// Every place that shows a peg is listed in verdict/places.ts. Whether a page was made that is not among them is told by
// tests/browser/closed-everywhere.test.ts, which walks all that is built.
describe('whatever the records, notices and lines, and whatever the day', () => {
  it('no place shows a peg more open than the verdict, nor closed that is open', () => {
    let closures = 0;
    fc.assert(
      fc.property(venues, (venue) => {
        const atlas = makeAtlas(venue, surveyVenue(venue), EMPTY_RATINGS);
        const places = placesOf(atlas, 'pit');
        expect(venue.pegs.flatMap((peg) => contradictions(places, peg, READING_DAYS))).toEqual([]);
        const closed = venue.pegs.filter((peg) => pegVerdict(factsOfPeg(atlas, peg), GUIDE_DAY).state === 'closed');
        closures += closed.length;
        for (const peg of venue.pegs) {
          expect(closedOnLocator(places, peg)).toBe(closed.filter((other) => other !== peg).length);
        }
      }),
      { numRuns: 40 },
    );
    expect(closures).toBeGreaterThan(20);
  });

  it('no place shows a stand that is retired, nor its number as anything but closed', () => {
    fc.assert(
      fc.property(venues, fc.constantFrom('9', '2b'), (venue, number) => {
        const gone = {
          ...venue.pegs[0]!,
          peg: 's-gone',
          id: 's-gone',
          was: [{ peg: number, until: '2026-01-31' }],
          retired: { from: '2026-02-01' },
        };
        const before = { ...venue, retired: [] };
        const after = { ...venue, retired: [gone] };
        const [old, now] = [before, after].map((each) =>
          placesOf(makeAtlas(each, surveyVenue(each), EMPTY_RATINGS), 'pit'),
        );
        const { atlas: _, locators: __, home: oldHome, now: oldNow, ...oldPlaces } = old!;
        const { atlas: ___, locators: ____, home, now: nowFile, ...places } = now!;
        // Every other place is as it is without the stand: no table, map, feed, data file, sheet or match knows it.
        expect(JSON.stringify(places)).toBe(JSON.stringify(oldPlaces));
        expect({ ...home, gone: [] }).toEqual(oldHome);
        expect(home.gone.map((each) => each.number)).toEqual([number]);
        const { [pegKey('pit', number)]: facts, ...others } = nowFile.pegs;
        expect(others).toEqual(oldNow.pegs);
        for (const day of READING_DAYS) expect(pegVerdict(facts!, day).state).toBe('closed');
      }),
      { numRuns: 15 },
    );
  });

  it('no sheet and no map is silent about overhead lines, nor about who looked for them', () => {
    fc.assert(
      fc.property(venues, (venue) => {
        const atlas = makeAtlas(venue, surveyVenue(venue), EMPTY_RATINGS);
        const hasMapped = venue.waters.some(({ map }) => map.overheadLines.length > 0);
        const survey = venue.settings.linesSurveyed === undefined ? 'has not said' : '3 Mar 2026';
        const words = waterPage(atlas, 'pit').linesWords;
        expect(words).toContain(survey);
        expect(words.includes('No line is on the club’s map.')).toBe(!hasMapped);
        for (const each of venue.pegs) {
          const sheet = pegSheet(atlas, pegKey('pit', each.peg));
          expect(sheet.linesWords).toContain(survey);
          expect(sheet.linesWords).toContain(hasMapped ? 'Nearest line' : 'No line is on');
          const told = JSON.stringify(sheet.safety);
          for (const one of each.hazards) {
            if (one.kind !== 'overhead-line' || one.clearedOn !== undefined) continue;
            expect(told.includes(one.place) || (hasMapped && one.line === '11 kV line')).toBe(true);
          }
          // That a peg is "clear" of a line is never said: only what was measured, or that nobody did.
          expect(told).not.toMatch(/\bclear of\b/);
        }
      }),
      { numRuns: 60 },
    );
  });
});
