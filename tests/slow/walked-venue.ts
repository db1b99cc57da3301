import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { RoundFile } from '../../src/content/round-file/round-file.ts';
import { type Day, isDay } from '../../src/domain/day.ts';
import { findingAt, roundOf, venueOnDisk } from '../commands/intake/venue-on-disk.ts';
import { FILE, type FileChange, replacing } from '../content/small-venue.ts';

/** The day of the walked guide, and the day its closure ends. */
export const WALKED_DAY: Day = '2026-11-21';
export const DAY_AFTER: Day = '2026-11-22';

const MAPPED_LINE = /^.*"overhead-line".*\n/m;
const LINES_SURVEYED = /^lines-surveyed.*\n/m;

/** A peg's record; `more` are lines of its front matter. */
export function walkedPeg(peg: string, lng: number, more: string): string {
  return `---\npeg: "${peg}"\nwater: mill-pond\nposition: { lat: 52.74999, lng: ${lng} }\nfacing: 0\n${more.trim()}\n---\n`;
}

/** The bailiff's words of point 1: a line straight over a platform that is far from the mapped one. */
export const RECORDED_LINE = `hazards:
  - { kind: overhead-line, place: new wires straight over the platform, severity: 5, likelihood: 5, found-on: 2026-11-12 }`;

const scum = (place: string) =>
  `hazards:\n  - { kind: algae-scum, place: ${place}, severity: 5, likelihood: 5, found-on: 2026-11-12, checked-on: 2026-11-12 }`;

const GATES = `{"type":"Feature","id":"drove","properties":{"kind":"gate","name":"Drove gate","vehicles":true,"ambulance":false,"locked":"always","opened_by":"Bailiff"},"geometry":{"type":"Point","coordinates":[-0.0505,52.7499]}},
{"type":"Feature","id":"road","properties":{"kind":"gate","name":"Road gate","vehicles":true,"ambulance":true,"locked":"no"},"geometry":{"type":"Point","coordinates":[-0.0512,52.7499]}}
]}
`;

/** The small venue with the cases of the walk in it. */
const WALKED: Readonly<Record<string, FileChange>> = {
  [FILE.map]: (text) => text.replace(/^.*"Road gate"[\s\S]*$/m, GATES),
  'notices/2026-11-21-stocking.md': `---
title: Stocking from the first platform
kind: closure
from: ${WALKED_DAY}
until: ${WALKED_DAY}
pegs: [mill-pond/1]
---

The lorry stands behind it.
`,
  'pegs/mill-pond/3.md': walkedPeg(
    '3',
    -0.0508,
    `status: closed\nstatus-since: 2026-10-01\nstatus-reason: Below new wires\nclearance: { clear-width: 1 m, measured-on: 2026-11-01 }\n${RECORDED_LINE}`,
  ),
  'pegs/mill-pond/4.md': walkedPeg(
    '4',
    -0.0507,
    'status: open\nclearance: { clear-width: 1 m, measured-on: 2026-11-01 }',
  ),
  'pegs/mill-pond/5.md': walkedPeg(
    '5',
    -0.0505,
    'status: open\nplatform: { kind: timber, condition: sound, inspected-on: 2026-09-25 }',
  ),
  'pegs/mill-pond/6.md': walkedPeg('6', -0.0504, `status: open\n${scum('along the edge')}`),
  'pegs/mill-pond/7.md': walkedPeg('7', -0.0503, `status: open\n${scum('in the bay')}`),
  'pegs/mill-pond/8.md': walkedPeg(
    '8',
    -0.0501,
    'status: closed\nstatus-since: 2026-10-01\nstatus-reason: Wires over the path\nmeasured-line-distance: { distance: 8 m, measured-on: 2026-11-12, method: tape }',
  ),
};

/** Writes the walked venue; its round is not yet taken in. */
export function walkedVenue(): string {
  return venueOnDisk(WALKED);
}

/** The same venue with no line on its map, and nobody said to have looked for one. */
export function venueWithoutLines(): string {
  return venueOnDisk({
    ...WALKED,
    [FILE.venue]: (text) => text.replace(LINES_SURVEYED, ''),
    [FILE.map]: (text) => text.replace(/^.*"Road gate"[\s\S]*$/m, GATES).replace(MAPPED_LINE, ''),
  });
}

/** What the bailiff handed over: an unsafe platform, a cleared hard rule, and findings at places that are no peg. */
export function walkedRound(folder: string): RoundFile {
  return roundOf({
    version: 2,
    day: WALKED_DAY,
    by: 'Bailiff',
    pegs: [
      findingAt(folder, '5', { platform: 'unsafe: a post is gone', hazards: [] }),
      findingAt(folder, '7', {
        hazards: [
          {
            did: 'cleared',
            kind: 'algae-scum',
            place: 'in the bay',
            foundOn: '2026-11-12',
            severity: 5,
            likelihood: 5,
            by: 'Bailiff',
            why: 'No scum for seven days',
          },
        ],
      }),
    ],
    places: [
      {
        water: 'mill-pond',
        place: 'drove',
        hazards: [{ did: 'found', kind: 'locked-gate', place: 'a new chain', severity: 3, likelihood: 3 }],
      },
      {
        water: 'mill-pond',
        hazards: [{ did: 'found', kind: 'fish-distress', place: 'six dead bream', severity: 2, likelihood: 3 }],
      },
    ],
  });
}

/** Sets the day of the data, as a secretary does, without touching anything else. */
export function setGuideDay(folder: string, day: Day): void {
  if (!isDay(day)) throw new Error(`No day: ${day}`);
  const path = join(folder, FILE.venue);
  writeFileSync(path, replacing(`guide-day: ${WALKED_DAY}`, `guide-day: ${day}`)(readFileSync(path, 'utf8')));
}
