import { describe, expect, it } from 'vitest';
import { dueCalendar, dueList, dueRows, dueSoonAndLater } from '../../src/atlas/due-list.ts';
import { SHIPPED_RISK_BANDS } from '../../src/domain/shipped-settings.ts';
import { examplePeg, exampleVenue } from '../domain/example-venue.ts';
import { atlasOf } from './example-atlas.ts';

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
        { entry: 'visit', water: 'pit', peg: '1', platform: 'sound' },
        { entry: 'cut', water: 'pit', peg: '1' },
      ],
    },
  ],
});

describe('what is due', () => {
  const items = dueList(atlasOf(venue));

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

  it('takes a visit for no inspection of the platform, and a look at its condition for one', () => {
    const visited = (platform?: string) =>
      dueList(
        atlasOf(
          exampleVenue({
            pegs: [examplePeg('1', { platform: { kind: 'timber' } })],
            rounds: [
              {
                ref: 'k7q2',
                day: '2026-10-01',
                file: '',
                entries: [{ entry: 'visit', water: 'pit', peg: '1', ...(platform === undefined ? {} : { platform }) }],
              },
            ],
          }),
        ),
      ).find(({ kind }) => kind === 'platform')?.check.checkedOn;
    expect([visited(), visited('unsafe')]).toEqual([null, '2026-10-01']);
  });

  it('makes a day of the band: to be dealt with within the month of finding it', () => {
    const hazard = {
      kind: 'trip',
      place: 'steps',
      severity: 3 as const,
      likelihood: 4 as const,
      foundOn: '2026-11-01',
      checkedOn: '2026-11-20',
    };
    const example = exampleVenue({ pegs: [examplePeg('1', { hazards: [hazard] })] });
    const [action] = dueList(
      atlasOf({ ...example, settings: { ...example.settings, riskBands: SHIPPED_RISK_BANDS } }),
    ).filter(({ kind }) => kind === 'action');
    expect([action?.what, action?.check.dueOn]).toEqual(['Deal with: Trip hazard, steps (high)', '2026-12-01']);
  });

  it('makes a calendar entry for each peg and kind, with no day in its id, so that a moved check moves', () => {
    const entries = dueCalendar(atlasOf(venue), items, 'example', 'https://club.example/due/');
    const dayOf = (uid: string, among = entries) => among.find((entry) => entry.uid === `${uid}@example`)?.day;
    expect(dayOf('platform/pit/peg/2')).toBe('2026-11-21');
    expect(dayOf('platform/pit/peg/1')).toBe('2026-12-30');
    expect(dayOf('clearance/pit/peg/1')).toBe('2027-03-30');
    for (const { uid } of entries) expect(uid).not.toMatch(/\d{4}/);
    const later = atlasOf({ ...venue, rounds: [{ ...venue.rounds[0]!, day: '2026-11-10' }] });
    const moved = dueCalendar(later, dueList(later), 'example', null);
    expect(moved.map(({ uid }) => uid).sort()).toEqual(entries.map(({ uid }) => uid).sort());
    expect(dayOf('platform/pit/peg/1', moved)).toBe('2027-02-08');
    expect(moved[0]).not.toHaveProperty('url');
    expect(entries.find(({ uid }) => uid.startsWith('platform/pit/peg/2'))?.summary).toBe(
      'The Pit 2: 1 check due, platform',
    );
  });

  it('says of each check whether its peg is closed, a calendar entry for the day it falls due', () => {
    const notice = {
      id: 'n',
      title: 'Tree work',
      kind: 'closure' as const,
      from: '2026-12-28',
      until: '2027-01-03',
      waters: [],
      pegs: ['pit/1' as const],
      markdown: '',
    };
    const atlas = atlasOf({ ...venue, notices: [notice] });
    const list = dueList(atlas);
    expect(list.filter(({ peg }) => peg === '1').every(({ standing }) => standing?.dated !== undefined)).toBe(true);
    const entries = dueCalendar(atlas, list, 'example', null);
    const wordsOf = (uid: string) => entries.find((entry) => entry.uid === `${uid}@example`)?.description;
    expect(wordsOf('platform/pit/peg/1')).toContain('The peg is closed until 3 Jan 2027: Tree work');
    expect(wordsOf('platform/pit/peg/2')).not.toContain('closed');
    // By March the peg is open again.
    expect(wordsOf('clearance/pit/peg/1')).not.toContain('closed');
  });

  it('makes one line of what was looked at together and falls due together, and loses nothing', () => {
    const hazard = (place: string, checkedOn: string) => ({
      kind: 'trip',
      place,
      severity: 2 as const,
      likelihood: 2 as const,
      foundOn: '2026-09-01',
      checkedOn,
    });
    const hazards = [hazard('path', '2026-11-12'), hazard('steps', '2026-11-12'), hazard('board', '2026-11-14')];
    const list = dueList(atlasOf(exampleVenue({ pegs: [examplePeg('1', { hazards })] })));
    const rows = dueRows(list).filter((row) => row.kind === 'hazard');
    expect(rows.map((row) => [row.what, row.check.dueOn])).toEqual([
      [['Trip hazard, path', 'Trip hazard, steps'], '2026-12-10'],
      [['Trip hazard, board'], '2026-12-12'],
    ]);
    expect(dueRows(list).flatMap((row) => row.what)).toHaveLength(list.length);
  });

  it('parts what is due within four weeks, or never checked, from what comes later', () => {
    const { soon, later, until } = dueSoonAndLater(items, '2026-12-02');
    expect(until).toBe('2026-12-30');
    expect(soon.map((item) => item.check.dueOn)).toEqual([null, null, null, '2026-12-30']);
    expect(later.map((item) => item.check.dueOn)).toEqual(['2027-03-30']);
  });
});
