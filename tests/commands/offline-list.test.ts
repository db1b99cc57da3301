import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { type ListedFile, type OfflineList, readOfflineList } from '../../src/client/offline/offline-list.ts';
import { readNowFile } from '../../src/client/offline/read-now-file.ts';
import { writeOfflineList } from '../../src/commands/offline-list.ts';

let dist: string;

beforeEach(() => {
  dist = mkdtempSync(join(tmpdir(), 'offline-'));
  write('now.json', JSON.stringify({ day: '2026-11-21', pegs: {}, notices: [] }));
  write('data/waters/kiln-pool.geojson', '{}');
  write('index.html', 'home');
  write('kiln-pool/14a/index.html', 'peg');
  write('404.html', 'none');
  write('_astro/x.Ab12.js', '1');
  write('photos/a.jpg', 'picture');
  write('paper/booklet/index.html', 'for the command that prints it');
});

afterEach(() => rmSync(dist, { recursive: true, force: true }));

function write(path: string, text: string): void {
  mkdirSync(dirname(join(dist, path)), { recursive: true });
  writeFileSync(join(dist, path), text);
}

async function made(base = '/'): Promise<OfflineList & { readonly worker: string }> {
  await writeOfflineList(dist, base);
  const list = await readOfflineList(readFileSync(join(dist, 'offline-list.json')));
  if (list === null) throw new Error('the list does not hold together');
  return { ...list, worker: readFileSync(join(dist, 'service-worker.js'), 'utf8') };
}

it('lists every file but the booklet’s by its address and set, what closes a peg first, and signs the now file', async () => {
  const { files, edition } = await made();
  expect(files.map(([path, , set]) => [path, set])).toEqual([
    ['now.json', 'first'],
    ['', 'first'],
    ['404.html', 'first'],
    ['_astro/x.Ab12.js', 'first'],
    ['data/waters/kiln-pool.geojson', 'first'],
    ['kiln-pool/14a/', 'guide'],
    ['photos/a.jpg', 'pictures'],
  ]);
  const now = readFileSync(join(dist, 'now.json'));
  expect((await readNowFile(now))?.edition).toBe(edition);
  expect(await readNowFile(now.subarray(0, now.length - 3))).toBeNull();
});

it('gives the same edition to the same guide, and another to a changed one or another address', async () => {
  const first = await made();
  expect((await made()).edition).toBe(first.edition);
  expect((await made('/guide/')).edition).not.toBe(first.edition);
  write('kiln-pool/14a/index.html', 'a new hazard');
  const changed = await made();
  expect(changed.edition).not.toBe(first.edition);
  const isNew = ([path, digest]: ListedFile) => !first.files.some((one) => one[0] === path && one[1] === digest);
  expect(changed.files.filter(isNew).map(([path]) => path)).toEqual(['now.json', 'kiln-pool/14a/']);
});

it('writes a worker that any browser can read, with its base in front', async () => {
  const { worker } = await made('/guide/');
  expect(worker.split('\n')[0]).toBe('const OFFLINE = {"base":"/guide/"};');
  expect(() => new Function(worker)).not.toThrow();
});
