import { describe, expect, it } from 'vitest';
import { dueCalendar, dueList } from '../../src/atlas/due-list.ts';
import { examplePeg, exampleVenue } from '../domain/example-venue.ts';

const venue = exampleVenue({
  pegs: [
    examplePeg('1', { platform: { kind: 'timber' }, clearance: { clearWidthMetres: 4, measuredOn: '2026-08-01' } }),
    examplePeg('2', { platform: { kind: 'slab' } }),
  ],
  rounds: [
    {
      ref: 'k7q2',
      day: '2026-10-01',
      file: 'rounds/2026-10-01-k7q2.csv',
      entries: [
        { entry: 'visit', water: 'pit', peg: '1' },
        { entry: 'cut', water: 'pit', peg: '1' },
      ],
    },
  ],
});

describe('what is due', () => {
  const items = dueList(venue);

  it('puts first what nobody ever checked', () => {
    expect(items.slice(0, 2).map((item) => [item.kind, item.peg, item.check.dueOn])).toEqual([
      ['platform', '2', null],
      ['clearance', '2', null],
    ]);
  });

  it('takes the latest of the rounds and the record', () => {
    expect(items.find((item) => item.kind === 'clearance' && item.peg === '1')?.check.checkedOn).toBe('2026-10-01');
    expect(items.find((item) => item.kind === 'platform' && item.peg === '1')?.check.dueOn).toBe('2026-12-30');
  });

  it('makes one calendar entry of all checks of a kind that fall on one day', () => {
    const entries = dueCalendar(items, '2026-11-21', 'https://club.example/due/');
    expect(entries.map((entry) => entry.uid)).toEqual([
      '2026-11-21-pit-platform@peg-atlas',
      '2026-11-21-pit-clearance@peg-atlas',
      '2026-12-30-pit-platform@peg-atlas',
      '2027-03-30-pit-clearance@peg-atlas',
    ]);
    expect(entries[0]?.summary).toBe('The Pit: 1 check due, platform');
  });
});
