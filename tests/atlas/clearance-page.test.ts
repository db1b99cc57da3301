import { describe, expect, it } from 'vitest';
import { clearancePage } from '../../src/atlas/clearance-page.ts';
import { cutsDue, nextCut } from '../../src/atlas/cuts-due.ts';
import { CLEARANCE_MEASURES } from '../../src/domain/clearance-measures.ts';
import type { BankRound, RoundEntry } from '../../src/domain/round.ts';
import { EXAMPLE_SETTINGS, examplePeg } from '../domain/example-venue.ts';
import { exampleAtlas } from './example-atlas.ts';

const round = (day: string, ...entries: Omit<RoundEntry, 'water'>[]): BankRound => ({
  ref: day,
  day,
  file: `rounds/${day}-ref.csv`,
  entries: entries.map((entry) => ({ ...entry, water: 'pit' })),
});

const rounds = [
  round('2026-05-01', { entry: 'cut', peg: '1' }),
  round('2026-07-01', { entry: 'cut', peg: '1' }, { entry: 'snag-removed', peg: '1' }),
  round('2026-11-14', { entry: 'clearance', peg: '1', clearWidthMetres: 4, pathWidthMetres: 1.2 }),
];
const FORECAST = {
  peg: 'pit/1',
  lastCut: '2026-07-01',
  dueOn: '2027-05-01',
  earliest: '2027-01-01',
  latest: '2027-10-01',
  ownIntervals: 1,
  isMeasured: false,
  isLate: false,
};
const pegs = [examplePeg('1'), examplePeg('10'), examplePeg('2')];

/** The measures these rounds have, before any that a later list has. */
const measured = (...lengths: readonly string[]) => CLEARANCE_MEASURES.map((_, index) => lengths[index] ?? '');

describe('the clearance page of a water', () => {
  const page = clearancePage(exampleAtlas({ venue: { rounds, pegs } }), 'pit');

  it('lists pegs as they are numbered, each visit latest first', () => {
    expect(page.pegs.map(({ peg }) => peg)).toEqual(['1', '2', '10']);
    expect(page.pegs[0]?.rows).toEqual([
      { day: '2026-11-14', measured: measured('4.0 m', '', '1.2 m'), done: '' },
      { day: '2026-07-01', measured: measured('', '', ''), done: 'cut, snag taken out' },
      { day: '2026-05-01', measured: measured('', '', ''), done: 'cut' },
    ]);
  });

  it('gives the next cut with its spread, what it rests on, and the way round the nesting months', () => {
    const next = page.pegs[0]!.next!;
    expect(next.lastCut).toBe('2026-07-01');
    expect(next.dueOn > EXAMPLE_SETTINGS.guideDay).toBe(true);
    expect(next.basis).toBe('1 interval of its own, the venue’s usual');
    expect(next.spread).toMatch(/^\d+ \w{3} 202\d to \d+ \w{3} 20\d\d$/);
    const wait = (dueOn: string) => nextCut({ ...FORECAST, dueOn }, [3, 4, 5, 6, 7, 8]).wait;
    expect(wait('2027-05-01')).toEqual({ before: '2027-02-28', from: '2027-09-01' });
    expect(wait('2027-10-01')).toBeNull();
  });

  it('gives no next cut at a peg that is closed, by its record, a notice or a line', () => {
    const closed = [examplePeg('1', { status: 'closed', statusReason: 'Boards off' }), ...pegs.slice(1)];
    const atlas = exampleAtlas({ venue: { rounds, pegs: closed } });
    expect(clearancePage(atlas, 'pit').pegs[0]).toMatchObject({ next: null, isClosed: true });
    expect(cutsDue(atlas).map(({ name }) => name)).toEqual([]);
    const notice = {
      id: '2026-11-20-works',
      title: 'Works',
      kind: 'closure' as const,
      from: '2026-11-20',
      until: '2026-11-30',
      waters: [],
      pegs: ['pit/1' as const],
      markdown: '',
    };
    expect(cutsDue(exampleAtlas({ venue: { rounds, pegs, notices: [notice] } }))).toEqual([]);
  });

  it('says nothing of a peg that no round has measured', () => {
    expect(page.pegs[1]).toMatchObject({ rows: [], next: null, nearLine: false });
  });

  it('measures in feet where the venue does', () => {
    const feet = exampleAtlas({
      venue: { rounds, pegs, settings: { ...EXAMPLE_SETTINGS, units: { length: 'ft', weight: 'lb' } } },
    });
    expect(clearancePage(feet, 'pit').pegs[0]?.rows[0]?.measured[0]).toBe('13 ft 1 in');
  });

  it('marks pegs where an overhead line is near, where the operator is asked before any work', () => {
    const standOff = {
      line: '11kv',
      name: '11 kV line',
      mappedMetres: 50,
      bearingDegrees: 0,
      platformMetres: 46,
      sweptMetres: 40,
      verdict: 'clear' as const,
    };
    const near = exampleAtlas({ venue: { pegs }, peg: { standOffs: [standOff] } });
    expect(clearancePage(near, 'pit').pegs.every(({ nearLine }) => nearLine)).toBe(true);
  });
});

describe('the cuts due in the whole venue', () => {
  it('stand the first due first, each with the way to its history, and leave out pegs never cut', () => {
    const cutLater = round('2026-08-01', { entry: 'cut', peg: '10' });
    const cuts = cutsDue(exampleAtlas({ venue: { rounds: [...rounds, cutLater], pegs } }));
    expect(cuts.map(({ name, href, basis }) => [name, href, basis])).toEqual([
      ['The Pit 1', '/due/clearance/pit/#peg-1', '1 interval of its own, the venue’s usual'],
      ['The Pit 10', '/due/clearance/pit/#peg-10', 'the venue’s usual alone'],
    ]);
  });
});
