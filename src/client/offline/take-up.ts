import { addDays } from '../../domain/day.ts';
import { changedText, changesPath, type GuideChanges, readChanges } from './file-changes.ts';
import type { KeptRecords } from './kept-records.ts';
import {
  digestsByPath,
  LIST_PATH,
  type ListedFile,
  NOW_PATH,
  type OfflineList,
  readOfflineList,
  VISITORS,
} from './offline-list.ts';
import { readNowFile } from './read-now-file.ts';
import type { Surroundings } from './surroundings.ts';
import { withDay } from './with-day.ts';

const FETCHED_AT_ONCE = 6;
/** A host that answers so asks to be left alone for now. */
const LEAVE_ALONE = new Set([429, 503]);
const TEXT = /(?:^$|\/|\.(?:html|json|geojson|js|css|svg|csv|xml|ics))$/;

/** How far a take-up came, and what stopped it. */
export interface TakeUp {
  readonly outcome:
    | 'whole'
    /** No list that holds together came. */
    | 'no-list'
    /** The list is of an earlier day than what is kept: some host on the way is behind. */
    | 'earlier-list'
    /** The signal went, or the host asked to be left alone. */
    | 'stopped'
    /** Files came that are not what the list says: an upload is under way, or the host changes files. */
    | 'mismatch'
    | 'no-room';
  readonly have: number;
  readonly need: number;
}

/**
 * Takes up the latest guide: every file is held against its digest before it is kept, what is kept already is not
 * fetched, and only once all are there does the new guide take the place of the old. Broken off anywhere, the next try
 * goes on from there.
 */
export async function takeUp(world: Surroundings, records: KeptRecords): Promise<TakeUp> {
  const list = await latestList(world);
  if (list === null) return { outcome: 'no-list', have: 0, need: 0 };
  const whole = await records.list('whole');
  const published = (await records.lastCheck())?.edition;
  if (isBehind(list, whole, published, world)) return { outcome: 'earlier-list', have: 0, need: 0 };
  try {
    await records.writeList('latest', list);
    return await fill(world, records, list, whole);
  } catch {
    return { outcome: 'no-room', ...(await progress(world, records, list)) };
  }
}

/** How many of the files that this phone needs of a list it has. */
export async function progress(
  world: Surroundings,
  records: KeptRecords,
  list: OfflineList,
): Promise<{ readonly have: number; readonly need: number }> {
  const kept = await records.keptDigests();
  const needed = neededFiles(list, await records.list('whole'), kept, await records.wanted(), world.savesData());
  return { have: needed.filter(([, digest]) => kept.has(digest)).length, need: needed.length };
}

async function latestList({ ask }: Surroundings): Promise<OfflineList | null> {
  const answer = await ask(LIST_PATH, 'everything');
  return answer?.status === 200 ? readOfflineList(answer.bytes) : null;
}

/**
 * Some host on the way may hand out an older list. One of an earlier day gives way to what is kept, unless the kept day
 * lies in the future: then that was a slip. So does one of the same day where what is kept is what the host told of last.
 */
function isBehind(
  list: OfflineList,
  whole: OfflineList | null,
  published: string | undefined,
  { today }: Surroundings,
): boolean {
  if (whole === null || list.edition === whole.edition || whole.day > addDays(today(), 1)) return false;
  return list.day < whole.day || (list.day === whole.day && whole.edition === published);
}

/**
 * The files of a list that belong into a whole copy on this phone. Where data are to be saved: what is needed first, of the
 * rest what is on the phone already, so that it keeps up, and the visitors' own where the reader asked for them.
 */
function neededFiles(
  list: OfflineList,
  whole: OfflineList | null,
  kept: ReadonlySet<string>,
  wanted: readonly string[],
  savesData: boolean,
): readonly ListedFile[] {
  const held = new Set(whole?.files.filter(([, digest]) => kept.has(digest)).map(([path]) => path));
  return list.files.filter(([path, , set]) => {
    if (set === 'pictures') return false;
    if (set === 'first' || held.has(path)) return true;
    if (set === VISITORS) return !savesData || wanted.includes(VISITORS);
    return !savesData && wanted.includes(set);
  });
}

/** How many of a guide's files for visitors are not on the phone: left out to save data, or cleared away by the browser. */
export function missingFiles(list: OfflineList, kept: ReadonlySet<string>): number {
  return list.files.filter(([, digest, set]) => (set === 'first' || set === VISITORS) && !kept.has(digest)).length;
}

async function fill(
  world: Surroundings,
  records: KeptRecords,
  list: OfflineList,
  whole: OfflineList | null,
): Promise<TakeUp> {
  const kept = await records.keptDigests();
  const needed = neededFiles(list, whole, kept, await records.wanted(), world.savesData());
  const waiting = needed.filter(([, digest]) => !kept.has(digest));
  const made = await changesSince(world, whole, list, waiting.length);
  let trouble: 'stopped' | 'mismatch' | null = null;
  const fetchNext = async (): Promise<void> => {
    for (let next = waiting.shift(); next !== undefined && trouble !== 'stopped'; next = waiting.shift()) {
      const found = (await carriedOn(records, list, whole, made, next)) || (await fetched(world, records, next));
      if (found === 'stopped' || found === 'mismatch') trouble = found;
      else if (next[0] === NOW_PATH) await seeKept(records, next[1]);
    }
  };
  await Promise.all(Array.from({ length: FETCHED_AT_ONCE }, fetchNext));
  const now = await records.keptDigests();
  const have = needed.filter(([, digest]) => now.has(digest)).length;
  if (have < needed.length) return { outcome: trouble ?? 'stopped', have, need: needed.length };
  // Before a page of this guide is shown, what it closes is known, whoever fetched its now file.
  await seeKept(records, digestsByPath(list).get(NOW_PATH));
  if (whole !== null && whole.check !== list.check) await records.writeList('before', whole);
  await records.writeList('whole', list);
  await dropUnlisted(records);
  return { outcome: 'whole', have, need: needed.length };
}

async function seeKept(records: KeptRecords, digest: string | undefined): Promise<void> {
  const bytes = await records.file(digest);
  if (bytes !== undefined) await seeNowIn(records, bytes);
}

async function seeNowIn(records: KeptRecords, bytes: Uint8Array): Promise<void> {
  const now = await readNowFile(bytes);
  if (now !== null) await records.see(now);
}

/** Fewer files than this are fetched as they are. */
const FEW_FILES = 3;
/** How many editions a phone may be behind, and still fetch no more than changes. */
const MAX_STEPS = 4;

/** What changed since the guide that is kept, edition by edition; null where the host does not tell, or tells of another one. */
async function changesSince(
  { ask }: Surroundings,
  whole: OfflineList | null,
  list: OfflineList,
  waiting: number,
): Promise<readonly GuideChanges[] | null> {
  if (whole === null || waiting <= FEW_FILES) return null;
  const steps: GuideChanges[] = [];
  let at = whole.edition;
  while (at !== list.edition && steps.length < MAX_STEPS) {
    const answer = await ask(changesPath(at), 'browser');
    const changes = answer?.status === 200 ? readChanges(answer.bytes) : null;
    if (changes === null || changes.from !== at) return null;
    steps.push(changes);
    at = changes.to;
  }
  return at === list.edition ? steps : null;
}

/**
 * Makes a file from the kept one: by what the host says has changed in it, or where nothing but the day did. What comes of
 * it is kept only where it is what the list says.
 */
async function carriedOn(
  records: KeptRecords,
  list: OfflineList,
  whole: OfflineList | null,
  steps: readonly GuideChanges[] | null,
  [path, digest]: ListedFile,
): Promise<boolean> {
  if (whole === null || !TEXT.test(path)) return false;
  const before = await records.file(digestsByPath(whole).get(path));
  if (before === undefined) return false;
  const text = new TextDecoder().decode(before);
  const texts = [
    ...(steps === null ? [] : [steps.reduce((made, { files }) => changedText(made, files[path] ?? []), text)]),
    ...(whole.day === list.day ? [] : [withDay(text, whole.day, list.day)]),
  ];
  for (const made of texts) if (await records.keepFile(digest, new TextEncoder().encode(made))) return true;
  return false;
}

async function fetched(
  { ask }: Surroundings,
  records: KeptRecords,
  [path, digest]: ListedFile,
): Promise<true | 'stopped' | 'mismatch'> {
  for (const past of ['browser', 'everything'] as const) {
    const answer = await ask(path, past);
    if (answer === null || LEAVE_ALONE.has(answer.status)) return 'stopped';
    // A now file of another edition than this list's is no part of the guide, but what it closes is closed.
    if (path === NOW_PATH && answer.status === 200) await seeNowIn(records, answer.bytes);
    if (answer.status === 200 && (await records.keepFile(digest, answer.bytes))) return true;
  }
  return 'mismatch';
}

/** Lets go of what neither the kept guide, the one before it, nor the one being taken up lists. */
async function dropUnlisted(records: KeptRecords): Promise<void> {
  const lists = await Promise.all((['whole', 'before', 'latest'] as const).map((name) => records.list(name)));
  const listed = new Set(lists.flatMap((list) => list?.files.map(([, digest]) => digest) ?? []));
  for (const digest of await records.keptDigests()) if (!listed.has(digest)) await records.dropFile(digest);
}
