import { existsSync } from 'node:fs';
import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { changesPath, type GuideChanges, readChanges, type TextChange } from '../../client/offline/file-changes.ts';
import {
  digestsByPath,
  LIST_PATH,
  NOW_PATH,
  type OfflineList,
  readOfflineList,
} from '../../client/offline/offline-list.ts';
import { packChanges } from '../../client/offline/packed-changes.ts';
import { textChange } from './text-change.ts';

/** Files that are text, by their addresses. What few open is fetched whole by those. */
const TEXT = /(?:^$|\/|\.(?:html|json|geojson|css|svg|csv|xml|ics))$/;
/** A phone that missed more editions than this fetches the new guide whole. */
const MAX_STEPS = 4;

/**
 * Writes beside a new guide what changed since the one built before it, so that a phone that keeps that one fetches the
 * changes and not every page again, and carries the changes up to that one on. Without a guide before it there are none.
 * @param distDir the new guide, its list written
 * @param before the guide that was built before
 */
export async function writeChanges(distDir: string, before: string): Promise<void> {
  const [now, old] = await Promise.all([listOf(distDir), listOf(before)]);
  if (now === null || old === null) return;
  const earlier = await changesIn(before);
  const steps: GuideChanges[] = [];
  if (old.edition !== now.edition) steps.push(await changesBetween(before, old, distDir, now));
  let next = earlier.find(({ to }) => to === old.edition);
  while (next !== undefined && steps.length < MAX_STEPS) {
    steps.push(next);
    next = earlier.find(({ to, from }) => to === steps.at(-1)?.from && steps.every((step) => step.from !== from));
  }
  for (const step of steps) {
    const file = join(distDir, changesPath(step.from));
    await mkdir(dirname(file), { recursive: true });
    await writeFile(file, JSON.stringify(packChanges(step)));
  }
}

async function listOf(folder: string): Promise<OfflineList | null> {
  const file = join(folder, LIST_PATH);
  return existsSync(file) ? readOfflineList(await readFile(file)) : null;
}

async function changesIn(folder: string): Promise<readonly GuideChanges[]> {
  const below = dirname(join(folder, changesPath('')));
  const names = existsSync(below) ? (await readdir(below)).sort() : [];
  const read = await Promise.all(names.map(async (name) => readChanges(await readFile(join(below, name)))));
  return read.filter((changes) => changes !== null);
}

async function changesBetween(
  before: string,
  old: OfflineList,
  distDir: string,
  now: OfflineList,
): Promise<GuideChanges> {
  const digests = digestsByPath(old);
  const files: Record<string, TextChange> = {};
  for (const [path, digest, set] of now.files) {
    const earlier = digests.get(path);
    const isForVisitors = (set === 'first' || set === 'guide') && path !== NOW_PATH && TEXT.test(path);
    if (earlier === undefined || earlier === digest || !isForVisitors) continue;
    const [from, to] = await Promise.all(
      [before, distDir].map((folder) => readFile(join(folder, fileOf(path)), 'utf8')),
    );
    if (from !== undefined && to !== undefined) files[path] = textChange(from, to);
  }
  return { from: old.edition, to: now.edition, files };
}

/** A page's file lies in its folder. */
function fileOf(address: string): string {
  const path = address.split('/').map(decodeURIComponent).join('/');
  return path === '' || path.endsWith('/') ? `${path}index.html` : path;
}
