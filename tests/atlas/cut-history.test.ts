import { describe, expect, it } from 'vitest';
import { clearanceByPeg } from '../../src/atlas/cut-history.ts';
import type { BankRound } from '../../src/domain/round.ts';
import { exampleVenue } from '../domain/example-venue.ts';

const round = (day: string, peg: string): BankRound => ({
  ref: `r${day}`,
  day,
  file: '',
  entries: [
    { entry: 'visit', water: 'pit', peg },
    { entry: 'cut', water: 'pit', peg },
    { entry: 'clearance', water: 'pit', peg, clearWidthMetres: 4 },
    { entry: 'gauge', water: 'pit', levelMetres: 0.1 },
  ],
});

describe('the clearance of a peg', () => {
  const byPeg = clearanceByPeg(
    exampleVenue({ rounds: [round('2026-07-01', '1'), round('2026-05-01', '1'), round('2026-05-20', '2')] }),
  );

  it('is told latest first, one visit a round', () => {
    const visits = byPeg.get('pit/1')?.visits;
    expect(visits?.map((visit) => visit.day)).toEqual(['2026-07-01', '2026-05-01']);
    expect(visits?.[0]).toEqual({ day: '2026-07-01', cut: true, snagRemoved: false, clearWidthMetres: 4 });
  });

  it('forecasts the next cut from the peg’s own intervals, or from the venue’s', () => {
    expect(byPeg.get('pit/1')?.forecast?.ownIntervals).toBe(1);
    expect((byPeg.get('pit/1')?.forecast?.dueOn ?? '') > '2026-11-21').toBe(true);
    expect(byPeg.get('pit/2')?.forecast?.ownIntervals).toBe(0);
  });
});
