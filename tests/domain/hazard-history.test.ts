import { describe, expect, it } from 'vitest';
import type { Hazard } from '../../src/domain/hazard.ts';
import { hazardHistory } from '../../src/domain/hazard-history.ts';
import type { BankRound, RoundEntry } from '../../src/domain/round.ts';

const at = { water: 'pit', peg: '1' };
const row = (entry: RoundEntry['entry'], change: Partial<RoundEntry> = {}): RoundEntry => ({
  entry,
  ...at,
  hazard: 'trip',
  place: 'The steps',
  ...change,
});
const round = (ref: string, day: string, ...entries: RoundEntry[]): BankRound => ({ ref, day, entries, file: '' });
const steps: Hazard = {
  kind: 'trip',
  place: 'the steps',
  severity: 4,
  likelihood: 4,
  foundOn: '2026-03-01',
  round: 'aaaa',
  foundBy: 'Bailiff',
};

describe('the history of a hazard', () => {
  it('is told by its rounds, oldest first, with the score of each day', () => {
    const history = hazardHistory(
      { ...steps, worsenedOn: '2026-06-02', clearedOn: '2026-07-01', clearedBy: 'Secretary', clearedWhy: 'new steps' },
      at,
      [
        round('cccc', '2026-07-01', row('hazard-cleared', { by: 'Secretary', why: 'new steps' })),
        round('aaaa', '2026-03-01', row('hazard-found', { severity: 2, likelihood: 3, by: 'Bailiff' })),
        round('bbbb', '2026-06-01', row('hazard-worsened', { day: '2026-06-02', severity: 4, likelihood: 4 })),
      ],
    );
    expect(history).toEqual([
      { did: 'found', on: '2026-03-01', round: 'aaaa', by: 'Bailiff', severity: 2, likelihood: 3 },
      { did: 'worsened', on: '2026-06-02', round: 'bbbb', severity: 4, likelihood: 4 },
      { did: 'cleared', on: '2026-07-01', round: 'cccc', by: 'Secretary', words: 'new steps' },
    ]);
  });

  it('is told by the record alone where no round is kept', () => {
    const record: Hazard = { ...steps, checkedOn: '2026-04-01', control: 'Rail put up', controlledOn: '2026-05-01' };
    expect(hazardHistory(record, at, []).map(({ did, on, words }) => [did, on, words])).toEqual([
      ['found', '2026-03-01', undefined],
      ['checked', '2026-04-01', undefined],
      ['controlled', '2026-05-01', 'Rail put up'],
    ]);
  });

  it('takes nothing from another peg, place, kind, or from an earlier hazard of the same place', () => {
    const rounds = [
      round('aaaa', '2025-01-01', row('hazard-found')),
      round('bbbb', '2026-04-01', row('hazard-checked', { foundOn: '2025-01-01' })),
      round('cccc', '2026-04-02', row('hazard-checked', { place: 'the path' })),
      round('dddd', '2026-04-03', row('hazard-checked', { peg: '2' })),
      round('eeee', '2026-04-04', row('hazard-checked', { hazard: 'rats' })),
      round('ffff', '2026-04-05', row('hazard-checked', { mappedAs: 'gate' })),
    ];
    expect(hazardHistory(steps, at, rounds).map(({ did, on }) => [did, on])).toEqual([['found', '2026-03-01']]);
  });
});
