import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { EXIT } from '../../src/commands/command-io.ts';
import { run } from '../../src/commands/league.ts';
import { UsageError } from '../../src/commands/read-arguments.ts';
import { smallVenue } from '../content/small-venue.ts';
import { writeFiles } from '../demo/write-venue.ts';
import { recordedIo } from './recorded-io.ts';

let folder: string;

/** Two matches on three pegs, in one section each; a-9x9x9x missed the second, a-5p5p5p came to it alone. */
const SECOND = {
  events: '2026-06-06-mill-pond,2026-06-06,mill-pond,match,5,full,1,3,14.5,SW,3\n',
  sessions:
    '2026-06-06-mill-pond,A,1,a-2b8c4d,weighed,9-00,,,,\n2026-06-06-mill-pond,A,2,a-7f3k9q,weighed,3-00,,,,\n2026-06-06-mill-pond,A,10,a-5p5p5p,dnw,,,,,\n',
};
const match = (day: string) =>
  `---\nname: Cup\ndate: ${day}\nwaters: [mill-pond]\nentries: 3\nplaces: 1\nstatus: fished\n---\n`;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'peg-atlas-league-'));
  const { texts } = smallVenue({
    'sessions/2026/events.csv': (text) => text + SECOND.events,
    'sessions/2026/sessions.csv': (text) => text + SECOND.sessions,
    'matches/2026-05-02-one.md': match('2026-05-02'),
    'matches/2026-06-06-two.md': match('2026-06-06'),
    'matches/2026-12-06-three.md': match('2026-12-06').replace('fished', 'planned'),
    'leagues/2026-season.md':
      '---\nname: Season 2026\nmatches: [2026-05-02-one, 2026-06-06-two, 2026-12-06-three]\n---\n',
  });
  writeFiles(texts, folder);
});
afterAll(() => rmSync(folder, { recursive: true }));

async function league(...args: string[]) {
  const io = recordedIo({ VENUE_DIR: folder });
  const code = await run(args, io);
  return { code, text: io.printed.join('\n') };
}

test('prints the standings by reference, worked by hand: a win and a second each, the heavier season ahead', async () => {
  const { code, text } = await league('2026-season', '--json');
  expect(code).toBe(EXIT.clean);
  const { standings, toCome, unnamed } = JSON.parse(text);
  expect(toCome).toEqual(['2026-12-06-three']);
  expect(unnamed).toBe(0);
  // One win and one second each: 3 points. 23-08 + 3-00 = 26-08 beats 10-04 + 9-00 = 19-04. A missed match is 4, one behind the last of three.
  expect(
    standings.map(({ angler, place, points }: { angler: string; place: number; points: number }) => [
      angler,
      place,
      points,
    ]),
  ).toEqual([
    ['a-7f3k9q', 1, 3],
    ['a-2b8c4d', 2, 3],
    ['a-5p5p5p', 3, 7],
    ['a-9x9x9x', 3, 7],
  ]);
});

test('prints a table that says what was missed and what is to come', async () => {
  const { text } = await league('leagues/2026-season.md');
  expect(text).toContain('Season 2026: 2 matches in the log, all count.');
  expect(text).toContain('Not in the log yet: 2026-12-06-three.');
  // The largest section had three: one more.
  expect(text).toContain('missed: 4 points. In brackets: dropped; –: missed and dropped');
  expect(text).toContain('anglers who NAME');
  expect(text).toMatch(/3 {2}a-5p5p5p +7 +missed +3 +0 oz/);
});

test('says which leagues there are', async () => {
  await expect(league('nothing')).rejects.toThrow(UsageError);
  await expect(league('nothing')).rejects.toThrow('one of 2026-season');
});
