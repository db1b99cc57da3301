import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { GuideCopy } from '../../src/client/offline/guide-copy.ts';
import { addDays } from '../../src/domain/day.ts';
import { runVenue } from '../browser/run-venue.ts';
import { MadeWorld } from '../client/offline/made-world.ts';

/**
 * Measures what a phone that keeps the whole demo guide fetches after the club took in one bank round of a water, then after one
 * match: `npm run bench:refetch`. Bytes are those of gzip, as hosts send text.
 */
const CONTENT = fileURLToPath(new URL('../../content', import.meta.url));
const BEFORE = '2026-11-21';
const WATER = 'eelback';
const LAST_ROUND = '2026-11-14';
const LAST_MATCH = '2026-11-08-eelback';
const NEXT_MATCH = '2026-11-22-eelback';

const scratch = mkdtempSync(join(tmpdir(), 'refetch-'));
try {
  const content = join(scratch, 'content');
  cpSync(CONTENT, content, { recursive: true });
  const out = join(scratch, 'dist');
  await runVenue(['build', '--venue', content, '--out', out]);
  const world = new MadeWorld();
  world.day = BEFORE;
  const copy = new GuideCopy(world.surroundings(), '/');
  upload(world, out);
  await copy.check();
  await copy.takeUp();
  report('first visit', world, []);

  let day = BEFORE;
  const moveDayOn = () => {
    const next = addDays(day, 7);
    edit('venue.md', (text) => text.replace(`guide-day: ${day}`, `guide-day: ${next}`));
    day = next;
  };
  const steps: readonly (readonly [name: string, change: () => void])[] = [
    ['the day alone', moveDayOn],
    [
      'one bank round',
      () => {
        moveDayOn();
        walkRound();
      },
    ],
    [
      'one match',
      () => {
        moveDayOn();
        fishMatch();
      },
    ],
  ];
  for (const [name, change] of steps) {
    change();
    const held = new Map(world.host);
    await runVenue(['build', '--venue', content, '--out', out]);
    upload(world, out);
    world.day = day;
    const changed = [...world.host].filter(([path, bytes]) => !held.get(path)?.every((byte, i) => byte === bytes[i]));
    await copy.check();
    await copy.takeUp();
    report(
      name,
      world,
      changed.map(([path]) => path),
    );
  }

  function edit(path: string, change: (text: string) => string): void {
    writeFileSync(join(content, path), change(readFileSync(join(content, path), 'utf8')));
  }

  function walkRound(): void {
    for (const name of readdirSync(join(content, 'pegs', WATER)))
      edit(join('pegs', WATER, name), (text) => text.replaceAll(`checked-on: ${LAST_ROUND}`, `checked-on: ${day}`));
    const round = readdirSync(join(content, 'rounds')).find((name) => name.startsWith(LAST_ROUND)) ?? '';
    const rows = readFileSync(join(content, 'rounds', round), 'utf8').split('\n');
    const own = rows.filter((row, i) => i === 0 || row.split(',')[1] === WATER);
    writeFileSync(join(content, 'rounds', `${day}-n3xt.csv`), `${own.join('\n')}\n`);
  }

  function fishMatch(): void {
    const add = (file: string, day: RegExp, to: string) =>
      edit(`sessions/2026/${file}`, (text) => {
        const rows = text.split('\n').filter((row) => row.startsWith(`${LAST_MATCH},`));
        return `${text.trimEnd()}\n${rows.map((row) => row.replace(LAST_MATCH, NEXT_MATCH).replace(day, to)).join('\n')}\n`;
      });
    add('events.csv', /,2026-11-08,/, ',2026-11-22,');
    add('sessions.csv', /^$/, '');
  }
} finally {
  rmSync(scratch, { recursive: true, force: true });
}

function upload(world: MadeWorld, folder: string): void {
  world.asked.length = 0;
  world.host.clear();
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile()) continue;
    const file = join(entry.parentPath, entry.name);
    const path = file.slice(folder.length + 1).replace(/(^|\/)index\.html$/, '$1');
    world.host.set(path.split('/').map(encodeURIComponent).join('/'), readFileSync(file));
  }
}

function report(name: string, world: MadeWorld, changed: readonly string[]): void {
  const asked = [...new Set(world.asked)];
  const sizes = asked.map((path) => [path, gzipSync(world.host.get(path) ?? '').length] as const);
  const bytes = sizes.reduce((sum, [, size]) => sum + size, 0);
  const groups = Map.groupBy(sizes, ([path]) => (/^[^/]+\/[^/]+\/$/.test(path) ? path.replace(/\/.*/, '/…/') : path));
  const parts = [...groups]
    .map(([group, of]) => [group, of.length, of.reduce((sum, [, size]) => sum + size, 0)] as const)
    .sort((a, b) => b[2] - a[2]);
  console.info(
    `${name}: ${changed.length} of ${world.host.size} files changed, ${asked.length} fetched, ${(bytes / 1000).toFixed(1)} kB`,
  );
  for (const [group, count, size] of parts.slice(0, 8))
    console.info(`  ${(size / 1000).toFixed(1)} kB  ${count} × /${group}`);
}
