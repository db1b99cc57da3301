import type { FolderFiles } from '../../../src/content/intake/staged-files.ts';
import { recordBase, venueId } from '../../../src/content/round-file/record-version.ts';
import type { PegFinding, RoundFile } from '../../../src/content/round-file/round-file.ts';

export const VENUE = `---
name: Example Fishery # the venue
club: Example A.S.
guide-day: 2026-11-01
units: { length: m, weight: kg }
---
Rules.
`;

export const PEG_1 = `---
peg: "1"
water: pool # the only one
status: open   # open or closed
platform: { kind: timber, condition: sound }
clearance: { clear-width: 4 m, measured-on: 2026-06-01 }
hazards:
  - kind: steep-bank
    place: the whole bank
    severity: 3
    likelihood: 3
    found-on: 2025-03-09
    checked-on: 2026-09-25
  - kind: trip
    place: second step
    severity: 2
    likelihood: 3
    found-on: 2026-05-05
---
## Winter
Words.
`;

export const PEG_2 = PEG_1.replace('peg: "1"', "peg: '2'").replaceAll('\n', '\r\n');

export const FOLDER: Readonly<Record<string, string>> = {
  'venue.md': VENUE,
  'waters/pool.md': '---\nname: Pool\n---\n',
  'pegs/pool/1.md': PEG_1,
  'pegs/pool/2.md': PEG_2,
  'gauge/pool.csv': 'date,level,water_temperature\n2026-10-01,0.1,12\n',
};

/** A folder kept in memory. */
export function folderOf(files: Readonly<Record<string, string>>): FolderFiles {
  const names = (prefix: string): string[] =>
    Object.keys(files)
      .filter((path) => path.startsWith(prefix))
      .map((path) => path.slice(prefix.length));
  return {
    text: (path) => files[path] ?? null,
    bytes: (path) => (files[path] === undefined ? null : new TextEncoder().encode(files[path])),
    rounds: names('rounds/'),
    pegsOf: (water) => names(`pegs/${water}/`).map((name) => name.replace(/\.md$/, '')),
  };
}

/** A round of the example venue with the findings given. */
export function exampleRound(change: Partial<RoundFile> = {}): RoundFile {
  return {
    format: 'peg-atlas-round',
    version: 1,
    venue: { id: venueId('Example Fishery', 'Example A.S.'), name: 'Example Fishery' },
    guideDay: '2026-11-01',
    ref: 'k7q2xw',
    day: '2026-11-12',
    pegs: [],
    gauges: [],
    photos: [],
    ...change,
  };
}

/** A finding at a peg of the example venue, made from the record as it is there. */
export function findingAt(peg: '1' | '2', change: Partial<PegFinding> = {}): PegFinding {
  return { water: 'pool', peg, hazards: [], ...recordBase(peg === '1' ? PEG_1 : PEG_2), ...change };
}
