import { createHash } from 'node:crypto';
import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { transform } from 'esbuild';

const WORKER = fileURLToPath(new URL('../client/service-worker.ts', import.meta.url));
const LIST = 'offline-list.json';
const SCRIPT = 'service-worker.js';
/** Kept once they were seen: a phone should not fetch every picture of a venue for the one peg its owner drew. */
const PICTURES = /\.(?:jpe?g|png|webp|avif)$/;

/**
 * Writes what makes a built guide readable offline into its folder: `offline-list.json`, every file with a hash of its
 * content, and `service-worker.js`, which carries the hash of that list, so that a changed guide is a changed worker.
 * @param distDir the built guide
 * @param base the path it will be served below, with a slash at each end
 */
export async function writeOfflineList(distDir: string, base: string): Promise<void> {
  const names = await readdir(distDir, { recursive: true, withFileTypes: true });
  const paths = names
    .filter((entry) => entry.isFile())
    .map((entry) => relative(distDir, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .filter((path) => path !== LIST && path !== SCRIPT && !PICTURES.test(path))
    .sort();
  const files: [string, string][] = [];
  for (const path of paths) files.push([addressOf(path), shortHash(await readFile(join(distDir, path)))]);
  const { code: worker } = await transform(await readFile(WORKER, 'utf8'), { loader: 'ts', minify: true });
  const version = shortHash(JSON.stringify([base, files, worker]));
  await writeFile(join(distDir, LIST), JSON.stringify({ version, files }));
  await writeFile(join(distDir, SCRIPT), `const OFFLINE = ${JSON.stringify({ version, base })};\n${worker}`);
}

/** A page's address is its folder. */
function addressOf(path: string): string {
  return path
    .replace(/(^|\/)index\.html$/, '$1')
    .split('/')
    .map(encodeURIComponent)
    .join('/');
}

function shortHash(content: Uint8Array | string): string {
  return createHash('sha256').update(content).digest('hex').slice(0, 16);
}
