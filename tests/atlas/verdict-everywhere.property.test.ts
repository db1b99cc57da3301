import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Atlas, makeAtlas } from '../../src/atlas/atlas.ts';
import { bankRoundPage } from '../../src/atlas/bank-round-page.ts';
import { locatorSvg } from '../../src/atlas/drawing/locator.ts';
import { mapSvg } from '../../src/atlas/drawing/map.ts';
import { homePage } from '../../src/atlas/home-page.ts';
import { linePegs } from '../../src/atlas/line-pegs.ts';
import { nearLinePegs } from '../../src/atlas/near-line-pegs.ts';
import { pegData } from '../../src/atlas/peg-data.ts';
import { pegLocators } from '../../src/atlas/peg-locator.ts';
import { pegSheet } from '../../src/atlas/peg-sheet.ts';
import { factsOfPeg, type PegStanding, venueVerdicts } from '../../src/atlas/peg-verdicts.ts';
import { roundMapSvg } from '../../src/atlas/round-map.ts';
import { roundSheet } from '../../src/atlas/round-sheet.ts';
import { safetyPage } from '../../src/atlas/safety-page.ts';
import { venueGeojson, waterGeojson } from '../../src/atlas/venue-geojson.ts';
import { waterMap } from '../../src/atlas/water-map.ts';
import { waterPage } from '../../src/atlas/water-page.ts';
import { addDays, type Day } from '../../src/domain/day.ts';
import type { Hazard } from '../../src/domain/hazard.ts';
import type { Notice } from '../../src/domain/notice.ts';
import { type Peg, pegKey } from '../../src/domain/peg.ts';
import { type PegFacts, pegVerdict } from '../../src/domain/peg-verdict.ts';
import type { Venue } from '../../src/domain/venue.ts';
import { destination } from '../../src/ground/geodesy/destination.ts';
import { surveyVenue } from '../../src/ground/survey-venue.ts';
import { examplePeg, exampleVenue } from '../domain/example-venue.ts';
import { EMPTY_RATINGS } from './example-atlas.ts';

const GUIDE_DAY = '2026-11-21';
const PEGS = ['1', '2', '3'];
/** Days a guide may be read on: its own, and after it. */
const READING_DAYS = [0, 1, 2, 5, 9, 30].map((days) => addDays(GUIDE_DAY, days));

const aroundGuideDay = fc.integer({ min: -12, max: 12 }).map((days) => addDays(GUIDE_DAY, days));
const foundBefore = fc.integer({ min: -60, max: 0 }).map((days) => addDays(GUIDE_DAY, days));
const level = fc.constantFrom(1, 2, 3, 4, 5);

const hazard = fc.record(
  {
    kind: fc.constantFrom('algae-scum', 'thin-ice', 'unsafe-platform', 'overhead-line', 'slippery', 'wasps-bees'),
    place: fc.constantFrom('the bay', 'over the platform', 'the steps'),
    severity: level,
    likelihood: level,
    likelihoodAfter: level,
    foundOn: foundBefore,
    clearedOn: fc.constant(GUIDE_DAY),
    distanceMetres: fc.integer({ min: 0, max: 140 }),
    line: fc.constantFrom('11 kV line', 'another line'),
    keptOpen: fc.constant({ on: GUIDE_DAY, by: 'Secretary', why: 'it is at the far bank' }),
  },
  { requiredKeys: ['kind', 'place', 'severity', 'likelihood', 'foundOn'] },
) as fc.Arbitrary<Hazard>;

const notice = fc.record(
  {
    kind: fc.constantFrom('closure', 'hazard', 'news'),
    from: aroundGuideDay,
    until: aroundGuideDay,
    replaces: fc.constantFrom('n0', 'n1'),
    pegs: fc.subarray(PEGS.map((peg) => pegKey('pit', peg))),
    waters: fc.constantFrom([], ['pit']),
  },
  { requiredKeys: ['kind', 'from', 'pegs', 'waters'] },
);

const peg = fc.record(
  {
    status: fc.constantFrom('open', 'open', 'closed'),
    statusReason: fc.constant('Boards rotten'),
    platform: fc.constantFrom(
      { kind: 'timber', condition: 'sound' },
      { kind: 'timber', lengthMetres: 9, condition: 'unsafe: post gone' },
    ),
    limits: fc.constantFrom({ poleMetres: 11 }, { castMetres: 5, poleMetres: 5 }),
    measuredLineDistance: fc.integer({ min: 1, max: 140 }).map((distanceMetres) => ({
      distanceMetres,
      measuredOn: '2026-11-10',
      method: 'tape',
    })),
    hazards: fc.array(hazard, { maxLength: 2 }),
  },
  { requiredKeys: ['status', 'hazards'] },
) as fc.Arbitrary<Partial<Peg>>;

const venues = fc
  .record({
    pegs: fc.tuple(...PEGS.map(() => peg)),
    notices: fc.array(notice, { maxLength: 3 }),
    lineMetres: fc.option(fc.integer({ min: 10, max: 250 })),
    ofWater: fc.array(hazard, { maxLength: 1 }),
    isSurveyed: fc.boolean(),
  })
  .map(({ pegs, notices, lineMetres, ofWater, isSurveyed }): Venue => {
    const base = exampleVenue();
    const at = examplePeg('1').at;
    const foot = destination(at, 90, lineMetres ?? 0);
    const overheadLines =
      lineMetres === null
        ? []
        : [{ id: 'l', name: '11 kV line', line: [destination(foot, 0, 150), destination(foot, 180, 150)] }];
    return {
      ...base,
      settings: {
        ...base.settings,
        guideDay: GUIDE_DAY,
        ...(isSurveyed ? { linesSurveyed: { on: '2026-03-03', by: 'Bailiff', how: 'walked' } } : {}),
      },
      waters: base.waters.map((water) => ({ ...water, hazards: ofWater, map: { ...water.map, overheadLines } })),
      pegs: pegs.map((changes, index) =>
        examplePeg(PEGS[index]!, { ...changes, at: destination(at, 270, 12 * index) }),
      ),
      notices: notices.map(
        ({ until, ...rest }, index): Notice => ({
          ...(rest as Omit<Notice, 'id' | 'title' | 'markdown'>),
          id: `n${index}`,
          title: `Notice ${index}`,
          markdown: '',
          ...(until === undefined || until < rest.from ? {} : { until }),
        }),
      ),
    };
  });

/** What a phone shows of an element on a day: the page as it was built, set right by the facts in it. */
function isShownClosed(
  standing: { readonly closed: unknown; readonly dated?: string | undefined },
  onDay: Day,
): boolean {
  if (standing.dated === undefined) return standing.closed !== null && standing.closed !== false;
  return pegVerdict(JSON.parse(standing.dated) as PegFacts, onDay).state === 'closed';
}

/** Every place that shows how a peg stands, with what it shows on a day. */
function shownAs(atlas: Atlas, name: string, onDay: Day): readonly (readonly [string, boolean])[] {
  const key = pegKey('pit', name);
  const byPeg = <T extends { readonly peg: string; readonly standing: PegStanding }>(rows: readonly T[], own = name) =>
    rows.filter((row) => row.peg === own).map(({ standing }) => isShownClosed(standing, onDay));
  const home = homePage(atlas).waters[0]!;
  const safety = safetyPage(atlas);
  const inClosures = (groups: readonly { readonly names: readonly string[]; readonly standing: PegStanding }[]) =>
    groups.some(({ names, standing }) => names.includes(name) && isShownClosed(standing, onDay));
  const neighbours = PEGS.filter((other) => other !== name).flatMap((other) =>
    byPeg(pegSheet(atlas, pegKey('pit', other)).neighbours),
  );
  const features = [...venueGeojson(atlas).features, ...waterGeojson(atlas, 'pit').features].filter(
    ({ properties }) => properties?.kind === 'peg' && properties.peg === name,
  );
  const verdicts = venueVerdicts(atlas);
  return [
    ['home grid', byPeg(home.pegs)[0]!],
    ['home closures', inClosures(home.closures.map(({ pegs, standing }) => ({ names: pegs.split(', '), standing })))],
    ['table', byPeg(waterPage(atlas, 'pit').pegs)[0]!],
    ['map', isShownClosed(waterMap(atlas, 'pit').pegs.find((mark) => mark.peg === name)!, onDay)],
    ['sheet', isShownClosed(pegSheet(atlas, key).standing, onDay)],
    [
      'safety page',
      inClosures(safety.closed.map(({ pegs, standing }) => ({ names: pegs.map((each) => each.peg), standing }))),
    ],
    ['round', byPeg(bankRoundPage(atlas, 'pit', new Map()).stops)[0]!],
    ['now', pegVerdict(verdicts.facts[key] ?? { status: 'open', standOffMetres: 30 }, onDay).state === 'closed'],
    ...neighbours.map((closed) => ['neighbour', closed] as const),
    ...byPeg(
      linePegs(atlas).flatMap(({ rows }) => rows),
      `The Pit ${name}`,
    ).map((closed) => ['by line', closed] as const),
    ...byPeg(nearLinePegs(atlas), `The Pit ${name}`).map((closed) => ['near a line', closed] as const),
    ...features.map(({ properties }) => ['GeoJSON', pegVerdict(properties!.facts, onDay).state === 'closed'] as const),
    ...pegData(atlas)
      .filter((datum) => datum.peg === name)
      .map(({ facts }) => ['pegs.json', pegVerdict(facts, onDay).state === 'closed'] as const),
  ];
}

describe('whatever the records, notices and lines, and whatever the day', () => {
  it('no place shows a peg more open than the verdict, nor closed that is open', () => {
    let closures = 0;
    fc.assert(
      fc.property(venues, (venue) => {
        const atlas = makeAtlas(venue, surveyVenue(venue), EMPTY_RATINGS);
        for (const onDay of READING_DAYS) {
          for (const each of venue.pegs) {
            const isClosed = pegVerdict(factsOfPeg(atlas, each), onDay).state === 'closed';
            if (isClosed) closures++;
            const wrong = shownAs(atlas, each.peg, onDay).filter(([, shown]) => shown !== isClosed);
            expect(wrong.map(([place]) => `${place}, peg ${each.peg}, ${onDay}`)).toEqual([]);
          }
        }
      }),
      { numRuns: 40 },
    );
    expect(closures).toBeGreaterThan(50);
  });

  it('what is printed, drawn or published for the day of the guide says closed of every closed peg', () => {
    fc.assert(
      fc.property(venues, (venue) => {
        const atlas = makeAtlas(venue, surveyVenue(venue), EMPTY_RATINGS);
        const locate = pegLocators(atlas, 'pit');
        for (const each of venue.pegs) {
          const { state } = pegVerdict(factsOfPeg(atlas, each), GUIDE_DAY);
          const row = roundSheet(atlas, 'pit').rows.find(({ peg: name }) => name === each.peg);
          expect(row?.isClosed).toBe(state === 'closed');
          expect(pegData(atlas).find(({ peg: name }) => name === each.peg)?.status).toBe(state);
          for (const svg of [mapSvg(waterMap(atlas, 'pit')), roundMapSvg(atlas, 'pit')]) {
            const mark = new RegExp(`<a class="m-peg( m-closed)?"[^>]*aria-label="Peg ${each.peg}[",]`).exec(svg);
            expect([mark !== null, mark?.[1] !== undefined]).toEqual([true, state === 'closed']);
          }
          const drawn = locatorSvg(locate(each));
          const closedAbout = venue.pegs.filter(
            (other) => other !== each && pegVerdict(factsOfPeg(atlas, other), GUIDE_DAY).state === 'closed',
          );
          const squares = drawn.match(/<path class="l-peg"(?![^>]*display="none")/g) ?? [];
          expect(squares).toHaveLength(closedAbout.length);
        }
      }),
      { numRuns: 40 },
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
