import { describe, expect, it } from 'vitest';
import type { Atlas } from '../../src/atlas/atlas.ts';
import { pegUnknowns } from '../../src/atlas/peg-unknowns.ts';
import { MONTHS, type Month } from '../../src/domain/day.ts';
import type { Peg } from '../../src/domain/peg.ts';
import type { LineDepth, PegSurvey } from '../../src/ground/survey.ts';
import { EXAMPLE_PEG_SURVEY, exampleAtlas } from './example-atlas.ts';

const line = (distanceMetres: number, depthMetres: number | null, why?: string) =>
  ({
    id: `${distanceMetres}`,
    name: `${distanceMetres} m`,
    distanceMetres,
    depthMetres,
    permitted: true,
    why,
  }) as LineDepth;
const counts = (months: readonly Month[]) => ({
  total: months.length,
  years: [],
  byStatus: [],
  byMonth: Object.fromEntries(MONTHS.map((month) => [month, months.filter((each) => each === month).length])) as Record<
    Month,
    number
  >,
});

function told(of: {
  readonly lines?: readonly LineDepth[];
  readonly fished?: readonly Month[];
  readonly peg?: Partial<Peg>;
  readonly safety?: Parameters<typeof pegUnknowns>[4];
}): readonly string[] {
  const atlas: Atlas = exampleAtlas();
  const survey: PegSurvey = { ...EXAMPLE_PEG_SURVEY, lineDepths: of.lines ?? [] };
  const peg = { ...atlas.venue.pegs[0]!, ...of.peg };
  return pegUnknowns(atlas, peg, survey, counts(of.fished ?? MONTHS), of.safety ?? []).map(({ words }) => words);
}

describe('what is not known at a peg', () => {
  it('tells the months without a session, or the few with one', () => {
    expect(told({ fished: [1, 2, 3, 4, 9, 10, 11] })).toContain('No session is logged in May to August, December.');
    expect(told({ fished: [3, 4, 9] })).toContain('Sessions are logged in March, April, September only.');
    expect(told({ fished: [] })).toContain('No session is logged.');
    expect(told({}).join(' ')).not.toContain('session');
  });

  it('tells how far out it was plumbed; land is no gap', () => {
    expect(told({ lines: [line(6, 1.2), line(11, 1.4), line(16, 1.5), line(20, null, 'unplumbed')] })).toContain(
      'Not plumbed past 16 m.',
    );
    expect(told({ lines: [line(6, null, 'unplumbed'), line(11, 1.4)] })).toContain('Not plumbed: 6 m.');
    expect(told({ lines: [line(6, null, 'unplumbed')] })).toContain('Not plumbed.');
    expect(told({ lines: [line(6, 1), line(11, null, 'beyond')] }).join(' ')).not.toContain('plumbed');
  });

  it('tells of checks never made, and of others from the day they are due', () => {
    const entry = { sign: 'W001', title: 'Steep bank: steps', action: '', control: null, facts: [] };
    expect(told({ safety: [{ ...entry, check: { checkedOn: null, dueOn: null, intervalDays: 28 } }] })).toContain(
      'When this was last looked at: Steep bank: steps',
    );
    expect(
      told({ safety: [{ ...entry, check: { checkedOn: '2026-11-01', dueOn: '2026-11-29', intervalDays: 28 } }] }),
    ).toContain('the hazards now');
  });

  it('tells what the record leaves out', () => {
    expect(told({ peg: {} }).join(' ')).toMatch(/platform is like.*swim is cut.*throw line hangs/);
  });
});
