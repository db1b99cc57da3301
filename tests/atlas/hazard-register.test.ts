import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { hazardRegister, registerCsv } from '../../src/atlas/hazard-register.ts';
import type { Hazard } from '../../src/domain/hazard.ts';
import { examplePeg, exampleVenue } from '../domain/example-venue.ts';

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
  const register = hazardRegister(venue);

  it('lists hard rules first, then by the score that stands now', () => {
    expect(register.inForce.map((row) => row.hazard.kind)).toEqual(['overhead-line', 'steep-bank', 'trip']);
  });

  it('keeps what was cleared apart, and loses nothing', () => {
    expect(register.cleared.map((row) => row.hazard.kind)).toEqual(['soft-platform']);
  });

  it('names every platform that must not be used, in the words of its record, and no other', () => {
    const unsafe = examplePeg('1', { platform: { kind: 'timber', condition: 'Unsafe: a post is gone' } });
    const sound = examplePeg('2', { platform: { kind: 'timber', condition: 'sound', inspectedOn: '2026-09-01' } });
    const { unsafePlatforms } = hazardRegister(exampleVenue({ pegs: [unsafe, sound] }));
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

  it('is read back by another program, one row a hazard', () => {
    const rows = parse(registerCsv(register), { columns: true }) as Record<string, string>[];
    expect(rows).toHaveLength(4);
    expect(rows[0]).toMatchObject({ peg: '2', what_to_do: 'Keep, "well" away', score: '1', hard_rule: 'yes' });
    expect(rows[3]).toMatchObject({ cleared_on: '2026-10-01', due_on: '' });
  });
});
