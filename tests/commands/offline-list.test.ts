import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { writeOfflineList } from '../../src/commands/offline-list.ts';

let dist: string;

beforeEach(() => {
  dist = mkdtempSync(join(tmpdir(), 'offline-'));
  write('index.html', 'home');
  write('kiln-pool/14a/index.html', 'peg');
  write('404.html', 'none');
  write('_astro/x.Ab12.js', '1');
  write('photos/a.jpg', 'picture');
});

afterEach(() => rmSync(dist, { recursive: true, force: true }));

function write(path: string, text: string): void {
  mkdirSync(dirname(join(dist, path)), { recursive: true });
  writeFileSync(join(dist, path), text);
}

async function made(base = '/'): Promise<{ version: string; files: [string, string][]; worker: string }> {
  await writeOfflineList(dist, base);
  const list = JSON.parse(readFileSync(join(dist, 'offline-list.json'), 'utf8')) as {
    version: string;
    files: [string, string][];
  };
  return { ...list, worker: readFileSync(join(dist, 'service-worker.js'), 'utf8') };
}

it('lists every page by its address, and every other file but pictures', async () => {
  const { files } = await made();
  expect(files.map(([path]) => path)).toEqual(['404.html', '_astro/x.Ab12.js', '', 'kiln-pool/14a/']);
});

it('gives the same version to the same guide, and another to a changed one or another address', async () => {
  const first = await made();
  expect((await made()).version).toBe(first.version);
  expect((await made('/guide/')).version).not.toBe(first.version);
  write('kiln-pool/14a/index.html', 'a new hazard');
  const changed = await made();
  expect(changed.version).not.toBe(first.version);
  expect(
    changed.files.filter(([path, hash]) => !first.files.some((one) => one[0] === path && one[1] === hash)),
  ).toHaveLength(1);
});

it('writes a worker that any browser can read, with its version and base in front', async () => {
  const { worker, version } = await made('/guide/');
  expect(worker.split('\n')[0]).toBe(`const OFFLINE = {"version":"${version}","base":"/guide/"};`);
  expect(() => new Function(worker)).not.toThrow();
});
