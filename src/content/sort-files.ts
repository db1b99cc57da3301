import type { Fault, LeftOut } from './fault.ts';
import { faultOfFile } from './sources/source.ts';
import { compareNaturally, type VenueFiles } from './venue-files.ts';

/** The kinds of file a venue folder holds. */
export type FileKind =
  | 'venue'
  | 'water'
  | 'map'
  | 'peg'
  | 'notice'
  | 'match'
  | 'league'
  | 'round'
  | 'events'
  | 'sessions'
  | 'hours'
  | 'soundings'
  | 'gauge';

/** Where each kind stands. */
const PLACES: readonly { readonly kind: FileKind; readonly pattern: RegExp; readonly example: string }[] = [
  { kind: 'venue', pattern: /^venue\.md$/, example: 'venue.md' },
  { kind: 'water', pattern: /^waters\/[a-z][a-z0-9-]*\.md$/, example: 'waters/kiln-pool.md' },
  { kind: 'map', pattern: /^waters\/[a-z][a-z0-9-]*\.geojson$/, example: 'waters/kiln-pool.geojson' },
  { kind: 'peg', pattern: /^pegs\/[a-z][a-z0-9-]*\/[^/]+\.md$/, example: 'pegs/kiln-pool/23.md' },
  { kind: 'notice', pattern: /^notices\/[^/]+\.md$/, example: 'notices/2026-11-02-boards-off.md' },
  { kind: 'match', pattern: /^matches\/[^/]+\.md$/, example: 'matches/2026-12-06-winter-three.md' },
  { kind: 'league', pattern: /^leagues\/[a-z0-9][a-z0-9-]*\.md$/, example: 'leagues/2026-winter.md' },
  { kind: 'round', pattern: /^rounds\/[^/]+\.csv$/, example: 'rounds/2026-11-12-k7q2.csv' },
  { kind: 'events', pattern: /^sessions\/\d{4}\/events\.csv$/, example: 'sessions/2026/events.csv' },
  { kind: 'sessions', pattern: /^sessions\/\d{4}\/sessions\.csv$/, example: 'sessions/2026/sessions.csv' },
  { kind: 'hours', pattern: /^sessions\/\d{4}\/hours\.csv$/, example: 'sessions/2026/hours.csv' },
  { kind: 'soundings', pattern: /^soundings\/[a-z][a-z0-9-]*\.csv$/, example: 'soundings/kiln-pool.csv' },
  { kind: 'gauge', pattern: /^gauge\/[a-z][a-z0-9-]*\.csv$/, example: 'gauge/kiln-pool.csv' },
];

/** A file that explains the folder to people is no record. */
const FOR_PEOPLE = /(?:^|\/)README\.md$/i;

export interface SortedFiles {
  /** Paths of each kind, in natural order. */
  readonly paths: Readonly<Record<FileKind, readonly string[]>>;
  readonly faults: readonly Fault[];
  readonly leftOut: readonly LeftOut[];
}

/** Sorts the files of a folder by kind. One that stands where nothing is read from is a fault: somebody believes it counts. */
export function sortFiles(files: VenueFiles): SortedFiles {
  const paths = Object.fromEntries(PLACES.map(({ kind }) => [kind, [] as string[]])) as Record<FileKind, string[]>;
  const faults: Fault[] = [];
  const leftOut: LeftOut[] = [];
  for (const path of [...files.texts.keys()].sort(compareNaturally)) {
    const place = PLACES.find(({ pattern }) => pattern.test(path));
    if (place !== undefined) paths[place.kind].push(path);
    else if (FOR_PEOPLE.test(path)) {
      leftOut.push({ file: path, line: 1, what: 'a file for people', why: 'It holds no record.' });
    } else faults.push(misplaced(path));
  }
  return { paths, faults, leftOut };
}

function misplaced(path: string): Fault {
  const ending = path.slice(path.lastIndexOf('.'));
  const folder = path.split('/')[0] ?? '';
  const near = PLACES.filter(({ example }) => example.startsWith(`${folder}/`) && example.endsWith(ending));
  const places = near.length > 0 ? near : PLACES.filter(({ example }) => example.endsWith(ending));
  return faultOfFile(path, {
    rule: 'file-place',
    found: 'a file where none of its kind is read',
    expected: places.map(({ example }) => example).join(', '),
    mend: 'Move or rename it; names of waters are small letters, digits and hyphens.',
    // A folder of its own may be the club's notes; a file among the records is meant to be one.
    severity: near.length > 0 || path.includes('/') ? 'error' : 'warning',
  });
}
