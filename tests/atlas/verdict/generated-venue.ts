import fc from 'fast-check';
import { addDays } from '../../../src/domain/day.ts';
import type { Hazard } from '../../../src/domain/hazard.ts';
import type { Notice } from '../../../src/domain/notice.ts';
import { type Peg, pegKey } from '../../../src/domain/peg.ts';
import type { Venue } from '../../../src/domain/venue.ts';
import { destination } from '../../../src/ground/geodesy/destination.ts';
import { examplePeg, exampleVenue } from '../../domain/example-venue.ts';

export const GUIDE_DAY = '2026-11-21';
const PEGS = ['1', '2', '3'];
/** Days a guide may be read on: its own, and after it. */
export const READING_DAYS = [0, 1, 2, 5, 9, 30].map((days) => addDays(GUIDE_DAY, days));

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

/** A venue of three pegs with records, notices and a line in any mix. */
export const venues = fc
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
