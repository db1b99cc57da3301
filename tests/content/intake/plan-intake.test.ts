import { describe, expect, it } from 'vitest';
import type { Choice } from '../../../src/content/intake/intake-choice.ts';
import { type IntakePlan, planIntake } from '../../../src/content/intake/plan-intake.ts';
import { recordBase } from '../../../src/content/round-file/record-version.ts';
import type { RoundFile } from '../../../src/content/round-file/round-file.ts';
import { exampleRound, FOLDER, findingAt, folderOf, PEG_1, PEG_2, VENUE } from './example-round.ts';

type Files = Readonly<Record<string, string>>;

function plan(
  files: Files,
  rounds: RoundFile | readonly RoundFile[],
  choice?: Choice,
  without: string[] = [],
): IntakePlan {
  const list = Array.isArray(rounds) ? (rounds as readonly RoundFile[]) : [rounds as RoundFile];
  const toTake = list.map((round) => ({
    file: `bank-round-${round.ref}.txt`,
    round,
    photos: new Map(round.photos.map(({ id }) => [id, new Uint8Array([1, 2, 3])])),
  }));
  return planIntake(folderOf(files), toTake, { today: '2026-11-20', without: new Set(without), choose: () => choice });
}

/** The folder as it is when the plan has been carried out. */
function folderAfter(files: Files, { files: changed }: IntakePlan): Record<string, string> {
  const texts = changed.map(({ path, bytes }) => [
    path,
    new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes ?? new Uint8Array()),
  ]);
  return { ...files, ...Object.fromEntries(texts) };
}

const steep = {
  kind: 'steep-bank',
  place: 'the whole bank',
  foundOn: '2025-03-09',
  severity: 3,
  likelihood: 3,
} as const;
const trip = { kind: 'trip', place: 'second step', foundOn: '2026-05-05', severity: 2, likelihood: 3 } as const;

const full = exampleRound({
  pegs: [
    findingAt('1', {
      status: 'closed',
      reason: 'The bank has slipped: keep off',
      platform: 'rotten',
      clearWidthMetres: 3.5,
      lowestBranchMetres: 2.25,
      snagRemoved: true,
      cut: true,
      lineDistanceMetres: 41,
      lineMethod: 'wheel',
      hazards: [
        { did: 'checked', ...steep },
        { did: 'cleared', ...trip },
        {
          did: 'found',
          kind: 'barbed-wire',
          place: 'left of the platform',
          severity: 3,
          likelihood: 2,
          at: { lat: 52.75, lng: -0.05 },
          photo: 'p1',
        },
      ],
      note: '<script>alert(1)</script>, "quoted"\nand a second line',
      at: { lat: 52.7512345678, lng: -0.0548 },
    }),
    findingAt('2', {}),
  ],
  gauges: [{ water: 'pool', levelMetres: -0.05, waterDegreesC: 9.5 }],
  photos: [
    { id: 'p1', water: 'pool', peg: '1', shows: 'Wire in the grass', jpeg: '' },
    { id: 'p2', water: 'pool', peg: '1', shows: 'The slip', jpeg: '' },
  ],
});

describe('taking a round in', () => {
  it('changes the fields of the records and nothing else in them', () => {
    const result = folderAfter(FOLDER, plan(FOLDER, full));
    expect(result['pegs/pool/1.md']).toBe(`---
peg: "1"
water: pool # the only one
status: closed   # open or closed
status-reason: "The bank has slipped: keep off"
status-since: 2026-11-12
platform: { kind: timber, condition: rotten, inspected-on: 2026-11-12 }
clearance: { clear-width: 3.5 m, measured-on: 2026-11-12, lowest-branch: 2.25 m }
measured-line-distance: { distance: 41 m, measured-on: 2026-11-12, method: wheel }
hazards:
  - kind: steep-bank
    place: the whole bank
    severity: 3
    likelihood: 3
    found-on: 2025-03-09
    checked-on: 2026-11-12
  - kind: trip
    place: second step
    severity: 2
    likelihood: 3
    found-on: 2026-05-05
    cleared-on: 2026-11-12
  - kind: barbed-wire
    place: left of the platform
    severity: 3
    likelihood: 2
    found-on: 2026-11-12
    checked-on: 2026-11-12
    round: k7q2xw
    photo: pool-1-k7q2xw-1.jpg
photos:
  - file: pool-1-k7q2xw-2.jpg
    alt: The slip
---
## Winter
Words.
`);
    expect(result['pegs/pool/2.md']).toBe(PEG_2);
    expect(result['venue.md']).toBe(VENUE.replace('2026-11-01', '2026-11-12'));
    expect(result['gauge/pool.csv']).toBe(`${FOLDER['gauge/pool.csv']}2026-11-12,-0.05 m,9.5\n`);
    expect(result['rounds/2026-11-12-k7q2xw.csv']).toMatchInlineSnapshot(`
      "entry,water,peg,status,platform,hazard,place,action,severity,likelihood,clear_width,lowest_branch,path_width,line_distance,level,water_temperature,lat,lng,note
      visit,pool,1,closed,rotten,,,,,,,,,,,,52.751235,-0.054800,"Closed: The bank has slipped: keep off
      <script>alert(1)</script>, ""quoted""
      and a second line"
      hazard-checked,pool,1,,,steep-bank,the whole bank,,3,3,,,,,,,,,
      hazard-cleared,pool,1,,,trip,second step,,2,3,,,,,,,,,
      hazard-found,pool,1,,,barbed-wire,left of the platform,,3,2,,,,,,,52.750000,-0.050000,
      clearance,pool,1,,,,,,,,3.5 m,2.25 m,,,,,,,
      snag-removed,pool,1,,,,,,,,,,,,,,,,
      cut,pool,1,,,,,,,,,,,,,,,,
      line-distance,pool,1,,,,,,,,,,,41 m,,,,,
      visit,pool,2,,,,,,,,,,,,,,,,
      gauge,pool,,,,,,,,,,,,,-0.05 m,9.5,,,
      "
    `);
  });

  it('leaves a record with carriage returns all its line ends', () => {
    const round = exampleRound({
      pegs: [findingAt('2', { hazards: [{ did: 'found', kind: 'rats', place: 'bank', severity: 2, likelihood: 2 }] })],
    });
    const text = folderAfter(FOLDER, plan(FOLDER, round))['pegs/pool/2.md']!;
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    expect(text).toContain('    found-on: 2026-11-12\r\n');
  });

  it('puts the files of rounds last, since readers go by them', () => {
    expect(plan(FOLDER, full).files.at(-1)!.path).toBe('rounds/2026-11-12-k7q2xw.csv');
  });

  it('changes nothing the second time and says that it is in', () => {
    const once = folderAfter(FOLDER, plan(FOLDER, full));
    const again = plan(once, full);
    expect(again.files).toEqual([]);
    expect(again.alreadyIn).toEqual([full]);
    expect(plan(FOLDER, [full, full]).files).toHaveLength(plan(FOLDER, full).files.length);
  });

  it('adds nothing twice where only the file of the round was lost', () => {
    const once = folderAfter(FOLDER, plan(FOLDER, full));
    const { 'rounds/2026-11-12-k7q2xw.csv': _, ...lost } = once;
    const again = plan(lost, full);
    expect(again.conflicts).toEqual([]);
    expect(folderAfter(lost, again)['pegs/pool/1.md']!.match(/barbed-wire/g)).toHaveLength(1);
    expect(folderAfter(lost, again)['gauge/pool.csv']).toBe(once['gauge/pool.csv']);
  });

  it('opens a closed peg again and takes the reason out', () => {
    const closed = {
      ...FOLDER,
      'pegs/pool/1.md': PEG_1.replace('status: open ', 'status: closed').replace(
        'platform:',
        'status-reason: flood\nplatform:',
      ),
    };
    const finding = findingAt('1', { status: 'open', known: { status: 'closed', 'status-reason': 'flood' } });
    const text = folderAfter(closed, plan(closed, exampleRound({ pegs: [finding] })))['pegs/pool/1.md']!;
    expect(text).toContain('status: open  # open or closed\nstatus-since: 2026-11-12\n');
    expect(text).not.toContain('flood');
  });

  it('moves the day of a measurement on also where the figure stayed, and never back', () => {
    const same = exampleRound({ pegs: [findingAt('1', { clearWidthMetres: 4 })] });
    expect(folderAfter(FOLDER, plan(FOLDER, same))['pegs/pool/1.md']).toBe(PEG_1.replace('2026-06-01', '2026-11-12'));
    const late = exampleRound({
      day: '2026-05-30',
      pegs: [findingAt('1', { clearWidthMetres: 4, hazards: [{ did: 'checked', ...steep }] })],
    });
    expect(folderAfter(FOLDER, plan(FOLDER, late))['pegs/pool/1.md']).toBe(PEG_1);
  });
});

describe('where the record changed since the round’s guide', () => {
  const edited = {
    ...FOLDER,
    'pegs/pool/1.md': PEG_1.replace('clear-width: 4 m', 'clear-width: 5 m').replace(
      'condition: sound',
      'condition: worn',
    ),
  };

  it('changes what nobody else touched and asks about what both changed', () => {
    const round = exampleRound({
      pegs: [findingAt('1', { clearWidthMetres: 3, pathWidthMetres: 1, platform: 'worn' })],
    });
    const { conflicts } = plan(edited, round);
    expect(conflicts).toEqual([
      {
        id: 'k7q2xw pool/1 clearance.clear-width',
        peg: 'pool/1',
        field: 'clearance.clear-width',
        guide: '4 m',
        folder: '5 m',
        round: '3 m',
      },
    ]);
    expect(folderAfter(edited, plan(edited, round, 'keep-folder'))['pegs/pool/1.md']).toContain(
      'clearance: { clear-width: 5 m, measured-on: 2026-11-12, path-width: 1 m }',
    );
    expect(folderAfter(edited, plan(edited, round, 'take-round'))['pegs/pool/1.md']).toContain(
      'clearance: { clear-width: 3 m, measured-on: 2026-11-12, path-width: 1 m }',
    );
  });

  it('knows a hazard again whose place is a bare number in the record', () => {
    const files = { ...FOLDER, 'pegs/pool/1.md': PEG_1.replace('place: second step', 'place: 12') };
    const base = recordBase(files['pegs/pool/1.md']!);
    const gone = { ...trip, place: '12', did: 'cleared', by: 'Bailiff' } as const;
    const round = exampleRound({ pegs: [findingAt('1', { ...base, hazards: [gone] })] });
    const after = folderAfter(files, plan(files, round))['pegs/pool/1.md']!;
    expect(after).toContain('place: 12\n');
    expect(after).toContain('cleared-on: 2026-11-12');
    expect(after.match(/- kind: trip/g)).toHaveLength(1);
  });

  it('asks about a hazard that was seen and is cleared or gone in the folder', () => {
    const round = exampleRound({ pegs: [findingAt('1', { hazards: [{ did: 'checked', ...trip }] })] });
    const cleared = {
      ...FOLDER,
      'pegs/pool/1.md': PEG_1.replace('found-on: 2026-05-05', 'found-on: 2026-05-05\n    cleared-on: 2026-11-10'),
    };
    expect(plan(cleared, round).conflicts).toMatchObject([
      { folder: 'cleared 2026-11-10', round: 'still there on 2026-11-12' },
    ]);
    expect(folderAfter(cleared, plan(cleared, round, 'keep-folder'))['pegs/pool/1.md']).toBe(cleared['pegs/pool/1.md']);
    expect(folderAfter(cleared, plan(cleared, round, 'take-round'))['pegs/pool/1.md']).toContain(
      'found-on: 2026-05-05\n    checked-on: 2026-11-12\n---',
    );
    const gone = { ...FOLDER, 'pegs/pool/1.md': PEG_1.slice(0, PEG_1.indexOf('  - kind: trip')).concat('---\n') };
    expect(plan(gone, round).conflicts).toMatchObject([{ folder: 'no longer in the record' }]);
    expect(folderAfter(gone, plan(gone, round, 'take-round'))['pegs/pool/1.md']).toContain(
      'found-on: 2026-05-05\n    checked-on: 2026-11-12',
    );
  });

  it('asks about a peg closed for two reasons', () => {
    const closed = {
      ...FOLDER,
      'pegs/pool/1.md': PEG_1.replace('status: open', 'status: closed').replace(
        'platform:',
        'status-reason: works\nplatform:',
      ),
    };
    const round = exampleRound({ pegs: [findingAt('1', { status: 'closed', reason: 'flood' })] });
    expect(plan(closed, round).conflicts).toMatchObject([
      { guide: 'open', folder: 'closed (works)', round: 'closed (flood)' },
    ]);
  });
});

describe('what is refused', () => {
  const rules = (round: RoundFile, files: Files = FOLDER): string[] =>
    plan(files, round).faults.map(({ rule }) => rule);

  it('refuses another venue’s round and names both', () => {
    const [fault] = plan(FOLDER, exampleRound({ venue: { id: 'other', name: 'Other Lakes' } })).faults;
    expect(fault).toMatchObject({
      rule: 'round-venue',
      found: 'a round of Other Lakes',
      expected: 'a round of Example Fishery (Example A.S.)',
    });
  });

  it('refuses a day to come', () => {
    expect(rules(exampleRound({ day: '2026-11-21' }))).toEqual(['round-future']);
    expect(rules(exampleRound({ day: '2026-11-20' }))).toEqual([]);
  });

  it('names every peg that is gone, and takes the rest without them', () => {
    const round = exampleRound({
      pegs: [findingAt('1', { platform: 'worn' }), { ...findingAt('1'), peg: '98' }, { ...findingAt('1'), peg: '99' }],
    });
    expect(plan(FOLDER, round).faults.map(({ found, mend }) => [found, mend.split('.')[1]])).toEqual([
      ['peg pool/98', ' Leave it out with --without pool/98, or bring its record back'],
      ['peg pool/99', ' Leave it out with --without pool/99, or bring its record back'],
    ]);
    expect(plan(FOLDER, round).files).toEqual([]);
    const rest = plan(FOLDER, round, undefined, ['pool/98', 'pool/99']);
    expect(rest.faults).toEqual([]);
    expect(folderAfter(FOLDER, rest)['pegs/pool/1.md']).toContain('condition: worn');
    expect(folderAfter(FOLDER, rest)['rounds/2026-11-12-k7q2xw.csv']).not.toContain('98');
  });

  it.each([
    ['was:\n  - { peg: "3", until: 2026-11-12 }', '13 Nov 2026'],
    ['since: 2026-11-14', '14 Nov 2026'],
  ])('refuses what was seen under a number that was another post’s that day: %s', (line, day) => {
    const folder = { ...FOLDER, 'pegs/pool/1.md': PEG_1.replace('water: pool', `${line}\nwater: pool`) };
    const seen = exampleRound({ pegs: [findingAt('1', { platform: 'worn' })] });
    expect(plan(folder, seen).faults).toMatchObject([
      { rule: 'round-number', found: 'peg pool/1, seen on 12 Nov 2026', field: 'pegs.pool/1' },
    ]);
    expect(plan(folder, seen).faults[0]?.expected).toContain(`from ${day} on`);
    expect(plan(folder, seen).files).toEqual([]);
    // A hazard's own day counts, and what was seen since is taken.
    const later = exampleRound({ day: '2026-11-15', pegs: [findingAt('1', { platform: 'worn' })] });
    expect(plan(folder, later).faults).toEqual([]);
    const early = findingAt('1', { hazards: [{ did: 'checked', ...trip, day: '2026-11-12' }] });
    expect(rules(exampleRound({ day: '2026-11-15', pegs: [early] }), folder)).toEqual(['round-number']);
    expect(plan(folder, seen, undefined, ['pool/1']).faults).toEqual([]);
  });

  it('refuses a round that is in the folder with other rows, and a water that is gone', () => {
    const once = folderAfter(FOLDER, plan(FOLDER, full));
    expect(rules({ ...full, gauges: [] }, once)).toEqual(['round-differs']);
    expect(rules(exampleRound({ gauges: [{ water: 'lake', levelMetres: 1 }] }))).toEqual(['round-water']);
  });

  it('refuses a record it cannot change safely and a gauge file without the column', () => {
    const shared = {
      ...FOLDER,
      'pegs/pool/1.md': PEG_1.replace('status: open', 'status: &s open').replace('hazards:', 'where: *s\nhazards:'),
    };
    expect(rules(exampleRound({ pegs: [findingAt('1', { status: 'closed', reason: 'x' })] }), shared)).toEqual([
      'record-edit',
    ]);
    const narrow = { ...FOLDER, 'gauge/pool.csv': 'date,level\n2026-10-01,0.1' };
    expect(rules(exampleRound({ gauges: [{ water: 'pool', waterDegreesC: 9 }] }), narrow)).toEqual(['gauge-column']);
    expect(
      folderAfter(narrow, plan(narrow, exampleRound({ gauges: [{ water: 'pool', levelMetres: 1 }] })))[
        'gauge/pool.csv'
      ],
    ).toBe('date,level\n2026-10-01,0.1\n2026-11-12,1 m\n');
  });
});
