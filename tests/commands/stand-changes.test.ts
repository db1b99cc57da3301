import { rmSync } from 'node:fs';
import { dirname } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { RunCommand } from '../../src/commands/command-io.ts';
import { UsageError } from '../../src/commands/read-arguments.ts';
import { run as repeg } from '../../src/commands/repeg.ts';
import { run as retire } from '../../src/commands/retire.ts';
import { changeDay } from '../../src/commands/stands/change-day.ts';
import { run as upgrade } from '../../src/commands/upgrade.ts';
import { loadVenue } from '../../src/content/load-venue.ts';
import { replacing } from '../content/small-venue.ts';
import { bytesOf, venueOnDisk } from './intake/venue-on-disk.ts';
import { recordedIo } from './recorded-io.ts';

let folder: string;

beforeEach(() => {
  folder = venueOnDisk();
});

afterEach(() => rmSync(dirname(folder), { recursive: true, force: true }));

const DAY = '2026-11-20';

async function said(run: RunCommand, ...args: readonly string[]) {
  const io = recordedIo({ VENUE_DIR: folder });
  const code = await run(args, io);
  return { code, out: io.printed.join('\n'), errors: io.errors.join('\n') };
}

test('a re-pegging is shown first, and written only when that is wanted', async () => {
  const before = bytesOf(folder);
  expect(await said(repeg, 'mill-pond', '2-10', '+1', '--from', DAY, '--dry-run')).toEqual({
    code: 0,
    out: 'mill-pond/2: 2 → 3, a number nobody has today (pegs/mill-pond/3.md)\nmill-pond/10: 10 → 11, a number nobody has today (pegs/mill-pond/11.md)\nNothing was changed.',
    errors: '',
  });
  expect(await said(repeg, 'mill-pond', '2-10', '+1', '--from', DAY)).toMatchObject({
    code: 1,
    errors: 'Add --yes to write this without being asked.\nNothing was changed.',
  });
  expect(bytesOf(folder)).toEqual(before);
  expect(await said(repeg, 'mill-pond', '2-10', '+1', '--from', DAY, '--yes')).toMatchObject({ code: 0, errors: '' });
  const { venue, faults } = await loadVenue(folder);
  expect(faults).toEqual([]);
  expect(venue?.pegs.map(({ peg, was }) => [peg, was])).toEqual([
    ['1', undefined],
    ['3', [{ peg: '2', until: '2026-11-19' }]],
    ['11', [{ peg: '10', until: '2026-11-19' }]],
  ]);
  // Nothing of the change is left lying about, and the records of before are gone.
  expect(Object.keys(bytesOf(folder)).filter((path) => /^pegs|^\./.test(path))).toEqual([
    'pegs/mill-pond/1.md',
    'pegs/mill-pond/11.md',
    'pegs/mill-pond/3.md',
  ]);
  // And down again, by a number that begins with a hyphen.
  expect(await said(repeg, 'mill-pond', '3-', '-1', '--from', '2026-11-21', '--yes')).toMatchObject({ code: 0 });
});

test('a change that the checks would not pass is shown and refused', async () => {
  // The record of a retired stand keeps the number 3 for the same days.
  rmSync(dirname(folder), { recursive: true, force: true });
  folder = venueOnDisk({
    'pegs/mill-pond/s-old.md':
      '---\nid: s-old\nwas: [{ peg: "3", until: 2026-11-20 }]\nretired: { from: 2026-11-21 }\nwater: mill-pond\nposition: { lat: 52.74999, lng: -0.0503 }\nfacing: 0\nstatus: open\n---\n',
  });
  const before = bytesOf(folder);
  const { code, errors } = await said(repeg, 'mill-pond', '2', '+1', '--from', DAY, '--yes');
  expect(code).toBe(1);
  expect(errors).toMatch(/The folder would not be valid any more:[\s\S]*number-overlap[\s\S]*Nothing was changed\./);
  expect(bytesOf(folder)).toEqual(before);
});

test('a peg that is retired leaves the guide with its reason, and its log stays', async () => {
  const refused = await said(retire, 'mill-pond/2', '--from', '2026-05-02', '--yes');
  expect(refused).toMatchObject({ code: 1, out: '' });
  expect(refused.errors).toContain('sessions/2026/sessions.csv:3:24');
  expect(
    await said(retire, 'mill-pond/2', '--from', DAY, '--why', 'Filled in: the bank slipped', '--yes'),
  ).toMatchObject({ code: 0, errors: '' });
  const { venue } = await loadVenue(folder);
  expect(venue?.pegs.map(({ peg }) => peg)).toEqual(['1', '10']);
  expect(venue?.retired?.[0]).toMatchObject({
    was: [{ peg: '2', until: '2026-11-19' }],
    retired: { from: DAY, why: 'Filled in: the bank slipped' },
  });
  expect(venue?.sessions).toHaveLength(3);
  const again = await said(retire, 'mill-pond/2', '--from', DAY, '--yes');
  expect(again.errors).toContain(`peg 2 of mill-pond, retired from ${DAY}`);
  expect(again.errors).toContain('(retire-twice)');
  const unknown = await said(retire, 'mill-pond/22', '--from', DAY, '--yes');
  expect(unknown.errors).toMatch(/Unexpected "mill-pond\/22".*\(folder-peg\)/);
});

test('an upgrade states the format and the ids, and is done once', async () => {
  expect(await said(upgrade, '--yes')).toMatchObject({ code: 0, errors: '' });
  expect(bytesOf(folder)['venue.md']).toContain('---\nformat: 2\nname: Example');
  expect(await said(upgrade)).toMatchObject({
    code: 0,
    out: 'The folder is of the newest format: nothing was changed.',
  });
  rmSync(dirname(folder), { recursive: true, force: true });
  folder = venueOnDisk({ 'venue.md': replacing('name: Example', 'format: 7\nname: Example') });
  const newer = await said(upgrade, '--yes');
  expect(newer.code).toBe(1);
  expect(newer.errors).toContain('The folder was written for a newer version of Peg Atlas.');
});

test.each([
  [repeg, ['mill-pond', '2-10']],
  [repeg, ['mill-pond', '10-2', '+1', '--from', DAY]],
  [repeg, ['mill-pond', '2', '0', '--from', DAY]],
  [repeg, ['mill-pond', '2', '+1']],
  [repeg, ['mill-pond', '2', '+1', '--from', '2026-02-30']],
  [retire, ['2', '--from', DAY]],
  [retire, ['mill-pond/2']],
] as const)('words that make no sense are a question of usage: %o', async (run, args) => {
  await expect(run([...args], recordedIo({ VENUE_DIR: folder }))).rejects.toThrow(UsageError);
});

test('a day that has begun nowhere yet is refused, and one that has begun somewhere is taken', () => {
  expect(() => changeDay('2026-11-22', new Date('2026-11-21T09:59:00Z'))).toThrow(/expected one that has come/);
  expect(changeDay('2026-11-22', new Date('2026-11-21T10:00:00Z'))).toBe('2026-11-22');
  expect(changeDay('2026-11-21', new Date('2026-11-21T09:59:00Z'))).toBe('2026-11-21');
});
