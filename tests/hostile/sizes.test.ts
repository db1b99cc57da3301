import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, expect, it } from 'vitest';
import { childEnvironment } from '../child-environment.ts';
import { FILE, smallVenue } from '../content/small-venue.ts';

const PROJECT = fileURLToPath(new URL('../..', import.meta.url));
const MAX_MEGABYTES = 1024;
const MAX_SECONDS = 10;
const scratch = mkdtempSync(join(tmpdir(), 'sizes-'));

afterAll(() => rmSync(scratch, { recursive: true, force: true }));

/** The real command in a process of its own, with the processor time and memory it took in all. */
function check(folder: string) {
  const report = join(scratch, 'report.json');
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    ['--import', join(PROJECT, 'tests/hostile/report-use.ts'), 'src/commands/venue.ts', 'check', '--venue', folder],
    { cwd: PROJECT, env: childEnvironment({ USE_REPORT: report }), encoding: 'utf8', maxBuffer: 2 ** 28 },
  );
  const use = JSON.parse(readFileSync(report, 'utf8')) as { seconds: number; megabytes: number };
  return { status, said: stdout + stderr, ...use };
}

function venueWith(name: string, changes: Readonly<Record<string, string>>): string {
  const folder = join(scratch, name);
  for (const [path, text] of new Map([...smallVenue().texts, ...Object.entries(changes)])) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
  return folder;
}

const map = smallVenue().texts.get(FILE.map)!;
const peg = smallVenue().texts.get(FILE.peg)!;
const sessions = smallVenue().texts.get(FILE.sessions)!;
const header = sessions.slice(0, sessions.indexOf('\n') + 1);

/** A path of so many points that the map is nineteen megabytes, whole but for what is put at its end. */
function largeMap(end: string): string {
  const points = Array.from({ length: 700_000 }, (_, i) => `[${(-0.051 + i * 1e-9).toFixed(10)},52.7501]`).join(',');
  const path = `{"type":"Feature","properties":{"kind":"path"},"geometry":{"type":"LineString","coordinates":[${points}]}}`;
  return map.replace('"features":[', () => `"features":[${path},${end}`);
}

const SIZES: readonly (readonly [string, () => Readonly<Record<string, string>>, RegExp])[] = [
  [
    '600 pegs with a fault in each',
    () =>
      Object.fromEntries(
        Array.from({ length: 600 }, (_, i) => [
          `pegs/mill-pond/${i + 100}.md`,
          peg.replace('peg: "1"', `peg: "${i + 100}"`).replace('facing: 0', 'facing: nowhere'),
        ]),
      ),
    /600 errors/,
  ],
  [
    'a 19 MB map with one fault',
    () => ({ [FILE.map]: largeMap('{"type":"Feature","properties":{"kind":"gaet"}},') }),
    /Did you mean gate/,
  ],
  ['a 19 MB map that is broken at its end', () => ({ [FILE.map]: largeMap('').slice(0, -4) }), /json-syntax/],
  [
    'a 19 MB map with a member twice',
    () => ({ [FILE.map]: largeMap('').replace(/\]\s*\}\s*$/, '],"type":"FeatureCollection"}') }),
    /json-duplicate/,
  ],
  [
    '600,000 broken rows',
    () => ({
      [FILE.sessions]: header + '2026-05-02-mill-pond,A,1,,wieghed\n'.repeat(590_000).slice(0, 20 * 2 ** 20 - 400),
    }),
    /row-cells[\s\S]*not looked at/,
  ],
  [
    '400,000 rows of an unknown word',
    () => ({ [FILE.sessions]: header + '2026-05-02-mill-pond,A,1,,wieghed,23-08,,,,\n'.repeat(400_000) }),
    /Did you mean weighed/,
  ],
];

it.each(SIZES)('%s is told within 1 GB and 10 s of processor', (name, make, expected) => {
  const { status, said, seconds, megabytes } = check(venueWith(name.replaceAll(/\W+/g, '-'), make()));
  console.info(`${name}: ${seconds.toFixed(1)} s of processor, ${megabytes.toFixed(0)} MB`);
  expect(said).toMatch(expected);
  expect(said).not.toContain('fault of the program');
  expect(status).toBe(1);
  expect(megabytes).toBeLessThanOrEqual(MAX_MEGABYTES);
  expect(seconds).toBeLessThanOrEqual(MAX_SECONDS);
});
