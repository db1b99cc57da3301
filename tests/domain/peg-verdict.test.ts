import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays } from '../../src/domain/day.ts';
import { closingHazards } from '../../src/domain/peg-facts.ts';
import {
  type ClosureDays,
  changesWithDay,
  isClosedForGood,
  type PegFacts,
  pegVerdict,
  verdictOnDays,
  verdictRank,
} from '../../src/domain/peg-verdict.ts';
import { SHIPPED_RISK_BANDS } from '../../src/domain/shipped-settings.ts';

const OPEN: PegFacts = { status: 'open', standOffMetres: 30 };
const closure = (from: string, until?: string, replacedFrom?: string): ClosureDays => ({
  notice: `${from}-boards`,
  title: 'Boards off',
  from,
  ...(until === undefined ? {} : { until }),
  ...(replacedFrom === undefined ? {} : { replacedFrom }),
});
const scum = {
  kind: 'algae-scum',
  name: 'Blue-green algae scum',
  place: 'the bay',
  foundOn: '2026-11-01',
  why: { rule: 'hard-rule' },
} as const;
const keptOpen = { on: '2026-11-02', by: 'Secretary', why: 'blown to the far bank' };

describe('the verdict on a peg for a day', () => {
  it('is open where nothing is known against it', () => {
    expect(pegVerdict(OPEN, '2026-11-21')).toEqual({ state: 'open' });
  });

  it('is closed by a notice on its first and its last day, and open on the day before and the day after', () => {
    const facts = { ...OPEN, closures: [closure('2026-11-21', '2026-11-23')] };
    const states = ['20', '21', '23', '24'].map((day) => pegVerdict(facts, `2026-11-${day}`).state);
    expect(states).toEqual(['open', 'closed', 'closed', 'open']);
    expect(pegVerdict(facts, '2026-11-22')).toMatchObject({ since: '2026-11-21', until: '2026-11-23' });
  });

  it('read of several days is never more open than on any of them', () => {
    const day = fc.integer({ min: 0, max: 40 }).map((days) => addDays('2026-11-10', days));
    const closures = fc.array(
      fc.tuple(day, day).map(([a, b]) => (a < b ? closure(a, b) : closure(b, a))),
      { maxLength: 3 },
    );
    fc.assert(
      fc.property(closures, day, day, (made, today, chosen) => {
        const facts = { ...OPEN, closures: made };
        const ranks = [today, chosen].map((each) => verdictRank(pegVerdict(facts, each)));
        expect(verdictRank(verdictOnDays(facts, [today, chosen]))).toBe(Math.max(...ranks));
        expect(verdictOnDays(facts, [today])).toEqual(pegVerdict(facts, today));
      }),
    );
  });

  it('is closed until the last of the closures that follow on without a gap', () => {
    const facts = { ...OPEN, closures: [closure('2026-11-21', '2026-11-23'), closure('2026-11-24', '2026-11-30')] };
    expect(pegVerdict(facts, '2026-11-22')).toMatchObject({ state: 'closed', until: '2026-11-30' });
    const gap = { ...OPEN, closures: [closure('2026-11-21', '2026-11-23'), closure('2026-11-25', '2026-11-30')] };
    expect(pegVerdict(gap, '2026-11-22')).toMatchObject({ state: 'closed', until: '2026-11-23' });
  });

  it('ends a closure on the day before another notice takes its place', () => {
    const facts = { ...OPEN, closures: [closure('2026-11-01', undefined, '2026-11-10')] };
    expect(pegVerdict(facts, '2026-11-09')).toMatchObject({ state: 'closed', until: '2026-11-09' });
    expect(pegVerdict(facts, '2026-11-10')).toEqual({ state: 'open' });
  });

  it('has no end while anything that has none closes it', () => {
    const facts: PegFacts = {
      ...OPEN,
      status: 'closed',
      reason: 'rotten',
      closures: [closure('2026-11-01', '2026-12-01')],
    };
    const verdict = pegVerdict(facts, '2026-11-21');
    expect(verdict).toMatchObject({ state: 'closed', until: null });
    expect(verdict.state === 'closed' && verdict.causes.map(({ by }) => by)).toEqual(['status', 'notice']);
  });

  it('counts an overhead line of no known distance as inside the stand-off, and one on the stand-off as outside', () => {
    const line = (metres: number | null): PegFacts => ({
      ...OPEN,
      lines: [{ name: 'wires', source: 'record', metres }],
    });
    expect([null, 0, 29.99, 30, 87].map((metres) => pegVerdict(line(metres), '2026-11-21').state)).toEqual([
      'closed',
      'closed',
      'closed',
      'open',
      'open',
    ]);
  });

  it('is closed by a platform that must not be used and by a hazard that closes', () => {
    expect(pegVerdict({ ...OPEN, unsafePlatform: 'unsafe: two boards gone' }, '2026-11-21').state).toBe('closed');
    expect(pegVerdict({ ...OPEN, hazards: [scum] }, '2026-11-21')).toMatchObject({
      state: 'closed',
      since: '2026-11-01',
      until: null,
    });
  });

  it('names all that closes it, what has no end first, from the earliest day that is known', () => {
    const line = { name: 'wires', source: 'map', metres: 12 } as const;
    const facts: PegFacts = {
      ...OPEN,
      status: 'closed',
      since: '2026-11-03',
      reason: 'rotten',
      lines: [{ ...line, metres: 41 }, line],
      unsafePlatform: 'unsafe: two boards gone',
      hazards: [scum, { ...scum, keptOpen }],
      closures: [closure('2026-11-05'), closure('2026-11-04', '2026-11-30', '2026-11-26')],
    };
    expect(pegVerdict(facts, '2026-11-21')).toEqual({
      state: 'closed',
      since: '2026-11-01',
      until: null,
      causes: [
        { by: 'status', since: '2026-11-03', reason: 'rotten' },
        { by: 'line', line, standOffMetres: 30 },
        { by: 'platform', condition: 'unsafe: two boards gone' },
        { by: 'hazard', hazard: scum },
        { by: 'notice', notice: '2026-11-05-boards', title: 'Boards off', since: '2026-11-05' },
        {
          by: 'notice',
          notice: '2026-11-04-boards',
          title: 'Boards off',
          since: '2026-11-04',
          until: '2026-11-25',
        },
      ],
    });
    expect(pegVerdict({ ...OPEN, status: 'closed' }, '2026-11-21')).toEqual({
      state: 'closed',
      since: null,
      until: null,
      causes: [{ by: 'status' }],
    });
    expect(pegVerdict({ ...OPEN, status: 'closed', since: '2026-11-03' }, '2026-11-21')).toMatchObject({
      since: '2026-11-03',
    });
    expect(pegVerdict({ ...OPEN, lines: [line] }, '2026-11-21')).toMatchObject({ since: null });
  });

  it('ends a closure by whichever is sooner, its own last day or the notice in its place', () => {
    const until = (last: string, replaced: string) =>
      pegVerdict({ ...OPEN, closures: [closure('2026-11-01', last, replaced)] }, '2026-11-02');
    expect(until('2026-11-20', '2026-11-10')).toMatchObject({ until: '2026-11-09' });
    expect(until('2026-11-05', '2026-11-10')).toMatchObject({ until: '2026-11-05' });
  });

  it('has no end where one of several closures of the day has none', () => {
    const facts = { ...OPEN, closures: [closure('2026-11-01', '2026-11-30'), closure('2026-11-02')] };
    expect(pegVerdict(facts, '2026-11-21')).toMatchObject({ state: 'closed', until: null });
  });

  it('is open within limits where somebody decided so, and says who', () => {
    expect(pegVerdict({ ...OPEN, hazards: [{ ...scum, keptOpen }], limits: { poleMetres: 11 } }, '2026-11-21')).toEqual(
      {
        state: 'limited',
        limits: [
          { by: 'reach', reach: { poleMetres: 11 } },
          { by: 'kept-open', hazard: { ...scum, keptOpen }, keptOpen },
        ],
      },
    );
  });

  it('never becomes more open when something is added against a peg, on any day', () => {
    const day = fc.integer({ min: 0, max: 60 }).map((days) => addDays('2026-11-01', days));
    const closures = fc.array(
      fc.record(
        { notice: fc.constant('n'), title: fc.constant('t'), from: day, until: day, replacedFrom: day },
        { requiredKeys: ['notice', 'title', 'from'] },
      ),
      { maxLength: 3 },
    );
    const lines = fc.array(
      fc.record({
        name: fc.constant('wires'),
        source: fc.constantFrom('map' as const, 'record' as const, 'measured' as const),
        metres: fc.option(fc.integer({ min: 0, max: 90 })),
      }),
      { maxLength: 2 },
    );
    const facts = fc.record({
      status: fc.constantFrom('open' as const, 'closed' as const),
      standOffMetres: fc.constant(30),
      closures,
      lines,
      hazards: fc.array(fc.constantFrom(scum, { ...scum, keptOpen }), { maxLength: 2 }),
    });
    fc.assert(
      fc.property(facts, facts, day, (one, other, onDay) => {
        const both: PegFacts = {
          ...one,
          status: one.status === 'closed' ? 'closed' : other.status,
          closures: [...one.closures, ...other.closures],
          lines: [...one.lines, ...other.lines],
          hazards: [...one.hazards, ...other.hazards],
        };
        const least = Math.max(verdictRank(pegVerdict(one, onDay)), verdictRank(pegVerdict(other, onDay)));
        expect(verdictRank(pegVerdict(both, onDay))).toBeGreaterThanOrEqual(least);
      }),
    );
  });

  it('says an end after which it is open, and before which it is never open', () => {
    const day = fc.integer({ min: 0, max: 40 });
    const facts = fc.array(fc.tuple(day, day), { minLength: 1, maxLength: 4 }).map(
      (spans): PegFacts => ({
        ...OPEN,
        closures: spans.map(([start, length]) =>
          closure(addDays('2026-11-01', start), addDays('2026-11-01', start + length)),
        ),
      }),
    );
    fc.assert(
      fc.property(facts, day, (one, days) => {
        const onDay = addDays('2026-11-01', days);
        const verdict = pegVerdict(one, onDay);
        if (verdict.state !== 'closed') return;
        expect(verdict.until).not.toBeNull();
        for (let next = onDay; next <= verdict.until!; next = addDays(next, 1))
          expect(pegVerdict(one, next).state).toBe('closed');
        expect(pegVerdict(one, addDays(verdict.until!, 1)).state).toBe('open');
      }),
    );
  });
});

describe('what a phone must work out again on another day', () => {
  const BEGINS = '2026-11-01';
  const day = fc.integer({ min: 0, max: 30 }).map((days) => addDays(BEGINS, days));
  const closures = fc.array(
    fc
      .record(
        { notice: fc.constant('n'), title: fc.constant('t'), from: day, until: day, replacedFrom: day },
        { requiredKeys: ['notice', 'title', 'from'] },
      )
      .filter(({ from, until, replacedFrom }) => (until ?? from) >= from && (replacedFrom ?? '2027-01-01') > from),
    { maxLength: 3 },
  );

  it('is every peg that a notice closes on that day or a later one, and no other', () => {
    fc.assert(
      fc.property(closures, day, (listed, fromDay) => {
        const facts = { ...OPEN, closures: listed };
        const later = Array.from({ length: 70 }, (_, days) => pegVerdict(facts, addDays(fromDay, days)).state);
        expect(changesWithDay(facts, fromDay)).toBe(later.includes('closed'));
      }),
    );
    expect(changesWithDay(OPEN, BEGINS)).toBe(false);
    const lastDay = { ...OPEN, closures: [closure('2026-11-01', '2026-11-05')] };
    expect(['2026-11-05', '2026-11-06'].map((from) => changesWithDay(lastDay, from))).toEqual([true, false]);
  });

  it('is no peg that something closes on every day', () => {
    const always: PegFacts[] = [
      { ...OPEN, status: 'closed' },
      { ...OPEN, hazards: [scum] },
      { ...OPEN, unsafePlatform: 'unsafe' },
      { ...OPEN, lines: [{ name: 'wires', source: 'record', metres: null }] },
    ];
    for (const facts of always) {
      expect(isClosedForGood(facts)).toBe(true);
      expect(changesWithDay({ ...facts, closures: [closure('2026-11-01')] }, BEGINS)).toBe(false);
    }
    for (const facts of [OPEN, { ...OPEN, hazards: [{ ...scum, keptOpen }] }, { ...OPEN, closures: [closure(BEGINS)] }])
      expect(isClosedForGood(facts)).toBe(false);
  });
});

describe('how far from open a verdict is', () => {
  it('rises from open over limits to closed', () => {
    const limited: PegFacts = { ...OPEN, limits: { poleMetres: 11 } };
    const ranks = [OPEN, limited, { ...OPEN, status: 'closed' as const }].map((facts) =>
      verdictRank(pegVerdict(facts, '2026-11-21')),
    );
    expect(ranks).toEqual([0, 1, 2]);
  });
});

describe('hazards that close a peg', () => {
  const hazard = { kind: 'algae-scum', place: 'the bay', severity: 1, likelihood: 1, foundOn: '2026-11-01' } as const;

  it('are those of a hard rule, whatever their score and whatever was done', () => {
    const controlled = { ...hazard, severityAfter: 1, likelihoodAfter: 1 } as const;
    expect(closingHazards([hazard, controlled], SHIPPED_RISK_BANDS)).toHaveLength(2);
    expect(closingHazards([{ ...hazard, clearedOn: '2026-11-02' }], SHIPPED_RISK_BANDS)).toEqual([]);
  });

  it('are those in a band out of the draw by the score that stands now', () => {
    const bees = { ...hazard, kind: 'wasps-bees', severity: 5, likelihood: 5 } as const;
    expect(closingHazards([bees], SHIPPED_RISK_BANDS)).toMatchObject([{ why: { rule: 'band', band: 'very high' } }]);
    expect(closingHazards([{ ...bees, likelihoodAfter: 1 }], SHIPPED_RISK_BANDS)).toEqual([]);
  });

  it('leave overhead lines to their distance', () => {
    expect(
      closingHazards([{ ...hazard, kind: 'overhead-line', severity: 5, likelihood: 5 }], SHIPPED_RISK_BANDS),
    ).toEqual([]);
  });
});
