import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { RunCommand } from '../../src/commands/command-io.ts';
import { run as repeg } from '../../src/commands/repeg.ts';
import { run as retire } from '../../src/commands/retire.ts';
import { loadVenue } from '../../src/content/load-venue.ts';
import { type FileChange, faultsOf, replacing, smallVenue } from '../content/small-venue.ts';
import { venueOnDisk } from './intake/venue-on-disk.ts';
import { recordedIo } from './recorded-io.ts';

const README = readFileSync(new URL('../../README.md', import.meta.url), 'utf8');
const SECTION = /^## When the venue changes\n([\s\S]*?)^## /m.exec(README)?.[1] ?? '';
const COMMANDS: Readonly<Record<string, RunCommand>> = { repeg, retire };

/** A line of a shell apart, as far as the section uses one: words, and text in double quotes, the only ones Windows knows. */
const wordsOf = (line: string) =>
  [...line.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, bare]) => quoted ?? bare ?? '');

/** The small venue under the names of the section, with a log that ends before the days in it. */
function kilnPool(): string {
  const renamed = [...smallVenue().texts].map(([path, text]) => [
    path
      .replaceAll('mill-pond', 'kiln-pool')
      .replace('pool/2.md', 'pool/23.md')
      .replace('rounds/2026-11-', 'rounds/2026-02-'),
    text
      .replaceAll('mill-pond', 'kiln-pool')
      .replaceAll(/2026-(0[3-9]|1[0-2])-/g, '2026-02-')
      .replace('until: 2026-02-01\n', '')
      .replaceAll('peg: "2"', 'peg: "23"')
      .replaceAll('kiln-pool/2]', 'kiln-pool/23]')
      .replaceAll(',A,2,', ',A,23,')
      .replaceAll('kiln-pool,2,', 'kiln-pool,23,'),
  ]);
  const away = [...smallVenue().texts.keys()].map((path) => [path, null]);
  return venueOnDisk(Object.fromEntries([...away, ...renamed]) as Record<string, FileChange>);
}

test('every command of the section does what it says, in a venue of those names', async () => {
  const lines = [...SECTION.matchAll(/`npm run -s venue -- ((?:repeg|retire) [^`]+)`/g)].map(([, line]) =>
    wordsOf(line!),
  );
  expect(lines.map(([word]) => word)).toEqual(['repeg', 'retire']);
  for (const [word, ...args] of lines) {
    const folder = kilnPool();
    const io = recordedIo({ VENUE_DIR: folder });
    const code = await COMMANDS[word!]!([...args, '--yes'], io);
    expect(io.errors, word).toEqual([]);
    expect(code).toBe(0);
    const { venue, faults } = await loadVenue(folder);
    expect(faults.filter(({ severity }) => severity === 'error')).toEqual([]);
    const all = [...venue!.pegs, ...(venue!.retired ?? [])];
    expect(all.some(({ was }) => was?.[0]?.until === '2026-02-28')).toBe(true);
  }
});

test('every field of the section reads as it stands there', () => {
  const HEAD = 'water: mill-pond';
  const fields = [...SECTION.matchAll(/`((?:since|moved|features|stocked):[^`]*)`/g)].map(([, field]) =>
    field!.replace('lat: …', 'lat: 52.74999').replace('lng: …', 'lng: -0.0508'),
  );
  expect(fields.map((field) => field.slice(0, field.indexOf(':')))).toEqual([
    'since',
    'moved',
    'features',
    'stocked',
    'since',
  ]);
  const inPeg = (field: string): FileChange => replacing(HEAD, `${field}\n${HEAD}`);
  const [since, moved, features, stocked, partSince] = fields as [string, string, string, string, string];
  const faults = faultsOf({
    'pegs/mill-pond/10.md': inPeg(moved),
    'pegs/mill-pond/2.md': replacing('features: [corner]', features.replace('lilies', 'reeds')),
    'pegs/mill-pond/3.md': `---\npeg: "3"\n${since}\nwater: mill-pond\nposition: { lat: 52.74999, lng: -0.0504 }\nfacing: 0\nstatus: open\n---\n`,
    'waters/mill-pond.md': replacing('close-season', `${stocked}\nclose-season`),
    'venue.md': replacing('species: [common carp]', `species: [common carp], ${partSince}`),
    'sessions/2026/sessions.csv': null,
    'sessions/2026/events.csv': null,
  });
  expect(faults.filter(({ severity }) => severity === 'error')).toEqual([]);
});
