import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { hazardRegister } from '../../src/atlas/hazard-register.ts';
import { registerCsv } from '../../src/atlas/register-csv.ts';
import type { Hazard } from '../../src/domain/hazard.ts';
import { examplePeg, exampleVenue } from '../domain/example-venue.ts';
import { atlasOf } from './example-atlas.ts';

const hazard = (kind: string, changes: Partial<Hazard> = {}): Hazard => ({
  kind,
  place: 'the platform',
  severity: 3,
  likelihood: 3,
  foundOn: '2026-09-01',
  ...changes,
});

const venue = exampleVenue({
  pegs: [
    examplePeg('1', { hazards: [hazard('trip'), hazard('soft-platform', { clearedOn: '2026-10-01' })] }),
    examplePeg('2', {
      hazards: [
        hazard('steep-bank', { severity: 5, likelihood: 5 }),
        hazard('overhead-line', { severity: 1, likelihood: 1, checkedOn: '2026-11-12', action: 'Keep, "well" away' }),
      ],
    }),
  ],
});

describe('the hazard register', () => {
  const register = hazardRegister(atlasOf(venue));

  it('lists hard rules first, then by the score that stands now', () => {
    expect(register.inForce.map((row) => row.hazard.kind)).toEqual(['overhead-line', 'steep-bank', 'trip']);
  });

  it('keeps what was cleared apart, and loses nothing', () => {
    expect(register.cleared.map((row) => row.hazard.kind)).toEqual(['soft-platform']);
  });

  it('names every platform that must not be used, in the words of its record, and no other', () => {
    const unsafe = examplePeg('1', { platform: { kind: 'timber', condition: 'Unsafe: a post is gone' } });
    const sound = examplePeg('2', { platform: { kind: 'timber', condition: 'sound', inspectedOn: '2026-09-01' } });
    const { unsafePlatforms } = hazardRegister(atlasOf(exampleVenue({ pegs: [unsafe, sound] })));
    expect(unsafePlatforms).toMatchObject([{ peg: '1', condition: 'Unsafe: a post is gone', inspectedOn: null }]);
  });

  it('gives the advice of the kind where the record has none', () => {
    expect(register.inForce[1]?.action).toMatch(/steps/);
    expect(register.inForce[0]?.action).toBe('Keep, "well" away');
  });

  it('says when each check falls due', () => {
    expect(register.inForce[0]?.check.dueOn).toBe('2026-12-10');
    expect(register.inForce[2]?.check.dueOn).toBe('2026-09-29');
  });

  it('repeats in every row how its peg stands on the day of the guide', () => {
    const closed = examplePeg('1', {
      hazards: [
        hazard('trip'),
        hazard('thin-ice', { place: 'the bay' }),
        hazard('slippery', { clearedOn: '2026-10-01' }),
      ],
    });
    const { inForce, cleared } = hazardRegister(atlasOf(exampleVenue({ pegs: [closed] })));
    const because = [...inForce, ...cleared].map(({ ofPeg }) => ofPeg?.standing.closed?.because);
    expect(because).toEqual(Array.from({ length: 3 }, () => 'since 1 Sep 2026: Ice, the bay'));
  });

  it('tells a spreadsheet of platforms not to be used and of closed pegs, as the page does', () => {
    const platform = { kind: 'timber', condition: 'unsafe: a post is gone', inspectedOn: '2026-11-12' } as const;
    const keptOpen = { on: '2026-11-14', by: 'Secretary', why: 'fished from the bank beside it' };
    const pegs = [examplePeg('1', { platform }), examplePeg('2', { platform: { ...platform, keptOpen } })];
    const rows = parse(registerCsv(hazardRegister(atlasOf(exampleVenue({ pegs })))), { columns: true });
    expect(rows).toMatchObject([
      {
        peg: '1',
        hazard: 'Unsafe platform',
        place: 'unsafe: a post is gone',
        hard_rule: 'yes',
        checked_on: '2026-11-12',
        peg_state: 'closed',
        peg_state_on: '2026-11-21',
        peg_closed_because: 'the platform must not be used (unsafe: a post is gone)',
        history: '',
      },
      { peg: '2', peg_state: 'limited', peg_closed_because: '', history: expect.stringContaining('beside it') },
    ]);
  });

  it('is read back by another program, one row a hazard', () => {
    const rows = parse(registerCsv(register), { columns: true }) as Record<string, string>[];
    expect(rows).toHaveLength(4);
    expect(rows[0]).toMatchObject({ peg: '2', what_to_do: 'Keep, "well" away', score: '1', hard_rule: 'yes' });
    expect(rows[3]).toMatchObject({ cleared_on: '2026-10-01', due_on: '' });
  });
});
