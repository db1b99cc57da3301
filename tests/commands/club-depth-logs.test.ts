import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { run } from '../../src/commands/import.ts';
import { loadVenue } from '../../src/content/load-venue.ts';
import { venueOnDisk } from './intake/venue-on-disk.ts';
import { recordedIo } from './recorded-io.ts';

/** Three depth logs of one small water, invented, each a form of its own: a sounder's sentences, a finder's table, a plumb book. */
let folder: string;
let home: string;
beforeEach(() => {
  folder = venueOnDisk();
  home = dirname(folder);
});
afterEach(() => rmSync(home, { recursive: true, force: true }));

/** A sentence with its checksum (NMEA 0183: all characters between $ and *, by exclusive or). */
function sentence(body: string): string {
  const sum = [...body].reduce((xor, character) => xor ^ character.charCodeAt(0), 0);
  return `$${body}*${sum.toString(16).toUpperCase().padStart(2, '0')}`;
}

/** Along 52.7502 N from 0.0508° W on, 0.0001° (6.7 m) a fix; a bottom that falls 0.1 m each, one lost bottom, one broken checksum. */
const SOUNDER = Array.from({ length: 12 }, (_, index) => {
  const minutes = (60 * (0.0508 - index * 0.0001)).toFixed(4).padStart(7, '0');
  const time = `1000${String(index * 2).padStart(2, '0')}`;
  const depth = index === 4 ? '19.5' : (1.2 + index * 0.1).toFixed(1);
  const read = sentence(`SDDPT,${depth},0.2`);
  return [
    sentence(`GPRMC,${time},A,5245.0120,N,000${minutes.slice(-7)},W,0.0,0.0,101126,,,A`),
    index === 6 ? read.replace(/\*../, '*00') : read,
  ].join('\r\n');
}).join('\r\n');

const FINDER = [
  'Finder export;;;;',
  'Latitude;Longitude;Depth (ft);Temp (C);Date',
  '52.75040;-0.05060;6,5;7,1;10/11/2026',
  '52.75045;-0.05040;8,0;7,1;10/11/2026',
  '52.76000;-0.05040;8,0;7,1;10/11/2026',
].join('\n');

const PLUMB_BOOK = ['Plumbed 10 November 2026;;', 'Peg;2 m;13 m', '1;4ft6;9 ft', '2;1,2 m;-'].join('\n');

const LOGS = {
  'a sounder with a lost bottom and a broken checksum': {
    file: 'sounder.nmea',
    text: SOUNDER,
    // What the sounder said and 0.2 m to the surface; the lost bottom, the broken sentence and the fix beyond the bank are out.
    rows: [
      '52.7502000,-0.0508000,,,,1.40 m,2026-11-10,',
      '52.7502000,-0.0507000,,,,1.50 m,2026-11-10,',
      '52.7502000,-0.0506000,,,,1.60 m,2026-11-10,',
      '52.7502000,-0.0505000,,,,1.70 m,2026-11-10,',
      '52.7502000,-0.0503000,,,,1.90 m,2026-11-10,',
      '52.7502000,-0.0501000,,,,2.10 m,2026-11-10,',
      '52.7502000,-0.0500000,,,,2.20 m,2026-11-10,',
      '52.7502000,-0.0499000,,,,2.30 m,2026-11-10,',
      '52.7502000,-0.0498000,,,,2.40 m,2026-11-10,',
    ],
    left: [
      '1 sentences: their checksum is wrong or missing',
      '1 depth: they jump away',
      '1 depth: more than 3 m outside',
    ],
  },
  'a finder’s table in feet with decimal commas, one point far away': {
    file: 'finder.csv',
    text: FINDER,
    rows: ['52.7504000,-0.0506000,,,,1.98 m,2026-11-10,', '52.7504500,-0.0504000,,,,2.44 m,2026-11-10,'],
    left: ['more than 3 m outside Mill Pond as drawn'],
  },
  'a plumb book by pegs and distances': {
    file: 'plumb.csv',
    text: PLUMB_BOOK,
    // 2 m and 13 m north of pegs that stand at 52.74999 N.
    rows: [
      '52.7500080,-0.0509000,,,,1.37 m,2026-11-10,',
      '52.7501068,-0.0509000,,,,2.74 m,2026-11-10,',
      '52.7500080,-0.0506000,,,,1.20 m,2026-11-10,',
    ],
    left: [],
  },
} as const;

const rowsOf = (): readonly string[] =>
  readFileSync(join(folder, 'soundings/mill-pond.csv'), 'utf8').trim().split('\n');

test.each(Object.entries(LOGS))('reads %s', async (_, { file, text, rows, left }) => {
  writeFileSync(join(home, file), text);
  writeFileSync(join(home, 'answers.yaml'), JSON.stringify({ all: { 'level 2026-11-10': 'unknown' } }));
  const before = rowsOf();
  const io = recordedIo({ VENUE_DIR: folder, HOME: home });
  const code = await run(['soundings', join(home, file), '--answers', join(home, 'answers.yaml'), '--yes'], io);
  expect([code, io.errors.join('\n')]).toEqual([0, expect.anything()]);
  expect(rowsOf().slice(before.length)).toEqual(rows);
  for (const line of left) expect(io.errors.join('\n')).toContain(line);
  expect((await loadVenue(folder)).faults.filter(({ severity }) => severity === 'error')).toEqual([]);
});
