import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { expect, test } from 'vitest';
import { noticesText } from '../../src/commands/third-party-notices.ts';

const PROJECT = fileURLToPath(new URL('../..', import.meta.url));
const inPackage = (path: string) => join(PROJECT, 'node_modules', path);

test('names every package a script holds once, with its version, its licence and the text of it', () => {
  const text = noticesText([
    inPackage('leaflet/dist/leaflet-src.esm.js'),
    `\0${inPackage('leaflet/dist/leaflet.css')}?used`,
    inPackage('idb/build/index.js'),
  ]);
  const { version } = JSON.parse(readFileSync(inPackage('leaflet/package.json'), 'utf8')) as { version: string };
  expect(text.split(`leaflet ${version} (BSD-2-Clause)`)).toHaveLength(2);
  expect(text).toContain(readFileSync(inPackage('leaflet/LICENSE'), 'utf8').trim());
  expect(text.indexOf('idb ')).toBeLessThan(text.indexOf('leaflet '));
});

test('counts no file of this program, and nothing without a file', () => {
  expect(noticesText([join(PROJECT, 'src/client/own-depths.ts'), '\0virtual:anything'])).toBe(noticesText([]));
});

test('the worker holds nobody else’s work, so the notices of the pages’ scripts are all there are', async () => {
  const { metafile } = await build({
    entryPoints: [join(PROJECT, 'src/client/service-worker.ts')],
    bundle: true,
    write: false,
    metafile: true,
  });
  expect(Object.keys(metafile.inputs).filter((path) => path.includes('node_modules'))).toEqual([]);
});
