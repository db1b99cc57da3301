import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planIntake } from '../../../src/content/intake/plan-intake.ts';
import type { HazardFinding, PegFinding, RoundFile } from '../../../src/content/round-file/round-file.ts';
import { exampleRound, FOLDER, findingAt, folderOf, PEG_1 } from './example-round.ts';

type Files = Readonly<Record<string, string>>;

interface Taken {
  readonly files: Record<string, string>;
  readonly told: string;
  readonly conflicts: readonly string[];
}

function take(files: Files, round: RoundFile, keepOpen?: ReadonlyMap<string, { by: string; why: string }>): Taken {
  const plan = planIntake(
    folderOf(files),
    [{ file: 'round.txt', round, photos: new Map(round.photos.map(({ id }) => [id, new Uint8Array([1])])) }],
    {
      today: '2026-11-30',
      without: new Set(),
      choose: () => undefined,
      ...(keepOpen === undefined ? {} : { keepOpen }),
    },
  );
  const changed = plan.files.map(({ path, bytes }) => [path, new TextDecoder().decode(bytes ?? new Uint8Array())]);
  return {
    files: { ...files, ...Object.fromEntries(changed) },
    told: plan.changes.map(({ where, field, from, to }) => `${where} ${field}: ${from ?? ''} -> ${to}`).join('\n'),
    conflicts: plan.conflicts.map(({ field }) => field),
  };
}

const at1 = (change: Partial<PegFinding>, round: Partial<RoundFile> = {}): RoundFile =>
  exampleRound({ version: 2, pegs: [findingAt('1', change)], ...round });
const edited = (...changes: readonly (readonly [string, string])[]): Files => ({
  ...FOLDER,
  'pegs/pool/1.md': changes.reduce((text, [from, to]) => text.replace(from, to), PEG_1),
});
const trip = { kind: 'trip', place: 'second step', foundOn: '2026-05-05', severity: 2, likelihood: 3 } as const;
const gone: HazardFinding = { did: 'cleared', ...trip };

describe('a round that is taken in late', () => {
  it('leaves a width that was measured after it, and says so', () => {
    const later = edited(['clear-width: 4 m, measured-on: 2026-06-01', 'clear-width: 5 m, measured-on: 2026-11-20']);
    const { files, told, conflicts } = take(later, at1({ clearWidthMetres: 3 }));
    expect(files['pegs/pool/1.md']).toBe(later['pegs/pool/1.md']);
    expect(told).toContain('not taken: 3 m, seen 2026-11-12 -> 5 m of 2026-11-20 stands: it is newer');
    expect(conflicts).toEqual([]);
  });

  it('changes a width that was measured before it, also where the guide did not know of that', () => {
    const earlier = edited(['clear-width: 4 m, measured-on: 2026-06-01', 'clear-width: 5 m, measured-on: 2026-11-10']);
    const { files, conflicts } = take(earlier, at1({ clearWidthMetres: 3 }));
    expect(files['pegs/pool/1.md']).toContain('clear-width: 3 m, measured-on: 2026-11-12');
    expect(conflicts).toEqual([]);
  });

  it('shows a real conflict: two figures of one day', () => {
    const same = edited(['clear-width: 4 m, measured-on: 2026-06-01', 'clear-width: 5 m, measured-on: 2026-11-12']);
    expect(take(same, at1({ clearWidthMetres: 3 })).conflicts).toEqual(['clearance.clear-width']);
  });

  it('does not clear what somebody saw there on a later day', () => {
    const seen = edited(['found-on: 2026-05-05', 'found-on: 2026-05-05\n    checked-on: 2026-11-20']);
    const { files, told } = take(seen, at1({ hazards: [gone] }));
    expect(files['pegs/pool/1.md']).toBe(seen['pegs/pool/1.md']);
    expect(told).toContain('gone on 2026-11-12 -> still there on 2026-11-20 stands');
  });

  it('does not open a peg that was closed after it', () => {
    const closed = edited([
      'status: open   # open or closed',
      'status: closed\nstatus-reason: flood\nstatus-since: 2026-11-20',
    ]);
    const { files, conflicts } = take(closed, at1({ status: 'open' }));
    expect(files['pegs/pool/1.md']).toContain('status: closed');
    expect(conflicts).toEqual([]);
  });

  it('keeps each fact’s own day over a round of two days', () => {
    const { files } = take(
      FOLDER,
      at1({
        day: '2026-11-12',
        days: { clearWidthMetres: '2026-11-13' },
        platform: 'worn',
        clearWidthMetres: 3,
        hazards: [{ ...gone, day: '2026-11-13' }],
      }),
    );
    const record = files['pegs/pool/1.md']!;
    expect(record).toContain('condition: worn, inspected-on: 2026-11-12');
    expect(record).toContain('clear-width: 3 m, measured-on: 2026-11-13');
    expect(record).toContain('cleared-on: 2026-11-13');
    expect(files['venue.md']).toContain('guide-day: 2026-11-13');
    expect(files['rounds/2026-11-12-k7q2xw.csv']).toContain('2026-11-13');
  });

  it('leaves the newest day standing, whatever the order in which rounds come in', () => {
    const days = fc.uniqueArray(fc.integer({ min: 1, max: 28 }), { minLength: 2, maxLength: 5 });
    fc.assert(
      fc.property(days, fc.array(fc.nat({ max: 100 }), { maxLength: 5 }), (list, order) => {
        const rounds = list.map((day) =>
          at1(
            { clearWidthMetres: day / 10, platform: `as on ${day}`, hazards: [{ did: 'checked', ...trip }] },
            { day: `2026-11-${String(day).padStart(2, '0')}`, ref: `r${String(day).padStart(5, 'a')}` },
          ),
        );
        const shuffled = rounds
          .map((round, index) => ({ round, key: order[index] ?? 0 }))
          .sort((a, b) => a.key - b.key)
          .map(({ round }) => round);
        const record = shuffled.reduce<Files>((files, round) => take(files, round).files, FOLDER)['pegs/pool/1.md']!;
        const last = Math.max(...list);
        expect(record).toContain(`clear-width: ${last / 10} m`);
        expect(record).toContain(`condition: as on ${last}`);
        expect(record).toContain(`    found-on: 2026-05-05\n    checked-on: 2026-11-${String(last).padStart(2, '0')}`);
      }),
      { numRuns: 60 },
    );
  });
});

describe('what closes a peg at intake', () => {
  const scum: HazardFinding = { did: 'found', kind: 'algae-scum', place: 'the margin', severity: 5, likelihood: 5 };

  it('closes a peg whose platform is unsafe, and one where a hard rule was found, with the reason', () => {
    expect(take(FOLDER, at1({ platform: 'unsafe' })).files['pegs/pool/1.md']).toMatch(
      /status: closed .*\nstatus-reason: "The platform is unsafe: do not use it\."\nstatus-since: 2026-11-12/,
    );
    expect(take(FOLDER, at1({ hazards: [scum] })).files['pegs/pool/1.md']).toContain('status: closed');
    expect(take(FOLDER, at1({ platform: 'worn' })).files['pegs/pool/1.md']).toContain('status: open');
  });

  it('keeps it open where somebody of the club says so, with who and why in the record', () => {
    const keep = new Map([['pool/1', { by: 'Secretary', why: 'fished from the bank beside it' }]]);
    const { files, told } = take(FOLDER, at1({ platform: 'unsafe', hazards: [scum] }), keep);
    const record = files['pegs/pool/1.md']!;
    expect(record).toContain('status: open');
    expect(record.match(/kept-open/g)).toHaveLength(2);
    expect(record).toContain('by: Secretary, why: fished from the bank beside it');
    expect(told).toContain('kept open:  -> by Secretary: fished from the bank beside it');
  });

  it('makes a closure notice of a closing with an end, and leaves the record’s status', () => {
    const { files } = take(FOLDER, at1({ status: 'closed', reason: 'wasps: # "nest"', until: '2026-11-15' }));
    expect(files['pegs/pool/1.md']).toContain('status: open');
    expect(files['notices/2026-11-12-round-k7q2xw-1.md']).toBe(
      '---\ntitle: "Peg 1 closed: wasps: # \\"nest\\""\nkind: closure\nfrom: 2026-11-12\nuntil: 2026-11-15\npegs: [pool/1]\n---\n',
    );
  });
});

describe('hazards', () => {
  it('does not clear a hard rule without who decided and why, and writes both where they are given', () => {
    const line = { kind: 'algae-scum', place: 'bay', foundOn: '2026-11-01', severity: 5, likelihood: 5 } as const;
    const scum = edited([
      '  - kind: trip',
      `  - kind: algae-scum\n    place: bay\n    severity: 5\n    likelihood: 5\n    found-on: 2026-11-01\n  - kind: trip`,
    ]);
    const bare = take(scum, at1({ hazards: [{ did: 'cleared', ...line }] }));
    expect(bare.files['pegs/pool/1.md']).toBe(scum['pegs/pool/1.md']);
    expect(bare.told).toContain('not cleared: gone on 2026-11-12 -> a hard rule is cleared only by who decided');
    const said = at1({ hazards: [{ did: 'cleared', ...line, by: 'Bailiff', why: 'clear three days running' }] });
    expect(take(scum, said).files['pegs/pool/1.md']).toMatch(
      /cleared-on: 2026-11-12\n {4}cleared-by: Bailiff\n {4}cleared-why: clear three days running/,
    );
  });

  it('takes the same hazard twice in a round for one, at its worst', () => {
    const one = { did: 'found', kind: 'rats', place: 'Bank', severity: 2, likelihood: 2 } as const;
    const { files } = take(FOLDER, at1({ hazards: [one, { ...one, place: 'bank ', severity: 4 }] }));
    expect(files['pegs/pool/1.md']!.match(/kind: rats/g)).toHaveLength(1);
    expect(files['pegs/pool/1.md']).toContain('severity: 4');
  });

  it('finds a hazard again whose place is a number', () => {
    const numbered = edited(['place: second step', 'place: 012']);
    const { files } = take(numbered, at1({ hazards: [{ did: 'cleared', ...trip, place: '012' }] }));
    expect(files['pegs/pool/1.md']).toContain('cleared-on: 2026-11-12');
  });

  it('writes a worse score and what was done about it, with their days', () => {
    const worse = take(FOLDER, at1({ hazards: [{ did: 'worsened', ...trip, severity: 5, likelihood: 4 }] }));
    expect(worse.files['pegs/pool/1.md']).toMatch(
      /severity: 5\n {4}likelihood: 4\n {4}found-on: 2026-05-05\n {4}worsened-on: 2026-11-12/,
    );
    const done: HazardFinding = {
      did: 'controlled',
      ...trip,
      control: 'Step pinned',
      severityAfter: 2,
      likelihoodAfter: 1,
    };
    expect(take(FOLDER, at1({ hazards: [done] })).files['pegs/pool/1.md']).toMatch(
      /control: Step pinned\n {4}severity: 2\n {4}likelihood: 3\n {4}severity-after: 2\n {4}likelihood-after: 1\n {4}found-on: 2026-05-05\n {4}controlled-on: 2026-11-12/,
    );
  });
});

describe('what is at no peg', () => {
  const gate: HazardFinding = { did: 'found', kind: 'locked-gate', place: 'chain on it', severity: 3, likelihood: 4 };

  it('goes into the record of the water, with the place of the map', () => {
    const round = exampleRound({
      version: 2,
      by: 'Bailiff',
      places: [{ water: 'pool', place: 'gate-1', hazards: [gate], note: '=cmd()' }],
    });
    const { files, told } = take(FOLDER, round);
    expect(files['waters/pool.md']).toContain('kind: locked-gate\n    place: chain on it\n    mapped-as: gate-1');
    expect(files['waters/pool.md']).toContain('found-by: Bailiff');
    expect(files['rounds/2026-11-12-k7q2xw.csv']).toContain("'=cmd()");
    expect(told).toContain('pool, gate-1 note to the club:  -> =cmd()');
  });

  it('closes every open peg of a water closed without an end, and says so in a notice', () => {
    const round = exampleRound({ version: 2, places: [{ water: 'pool', hazards: [], closing: { reason: 'flood' } }] });
    const { files } = take(FOLDER, round);
    expect(files['pegs/pool/1.md']).toContain('status: closed');
    expect(files['pegs/pool/2.md']).toContain('status-reason: flood');
    expect(files['notices/2026-11-12-round-k7q2xw-1.md']).toContain('waters: [pool]');
  });

  it('keeps a notice written on the bank as plain text', () => {
    const round = exampleRound({
      version: 2,
      notices: [{ water: 'pool', pegs: [], kind: 'works', title: 'Saws\nout', text: '# not a heading\n<b>no</b>' }],
    });
    expect(take(FOLDER, round).files['notices/2026-11-12-round-k7q2xw-1.md']).toBe(
      '---\ntitle: Saws out\nkind: works\nfrom: 2026-11-12\nwaters: [pool]\n---\n\n\\# not a heading\n\\<b\\>no\\</b\\>\n',
    );
  });
});
