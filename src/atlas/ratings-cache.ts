import { readdir, rm, stat } from 'node:fs/promises';
import { basename, join } from 'node:path';
import type { KeptWork } from '../ratings/kept-work.ts';
import { notesOn } from '../ratings/rate-venue.ts';
import { type RatedVenue, ratedVenue, withoutWords } from '../ratings/rated-venue.ts';
import type { Ratings } from '../ratings/ratings.ts';
import { cacheFolder } from './cache-folder.ts';
import { codeDigest } from './code-digest.ts';
import { digestOf, keepJson, keptJson } from './kept-json.ts';
import { projectRoot } from './project-root.ts';
import { rateInThreads } from './rate-in-threads.ts';

/** Of the simulated fields: any number does, as long as it stays the same. */
const SEED = 20_261_121;
/** Fits kept of one venue, and of all: an association of many venues must find each of them again. */
const KEPT = 12;
const KEPT_OF_ALL = 240;
/** Venues whose last work is kept. */
const KEPT_WORK = 40;

export interface LoadRatingsOptions {
  /** Told what is being fitted; silent where the fit was kept. */
  readonly progress?: (what: string) => void;
  /** Where fits are kept; see `cacheFolder` for the usual place. */
  readonly folder?: string;
}

/**
 * The ratings of a venue: read back where this log was fitted before by this code, fitted and kept otherwise, with the
 * help of what the last run of the same venue kept. A kept file that is not whole, or that cannot be read or written, only costs the time of a fit.
 */
export async function loadRatings(venue: RatedVenue, options: LoadRatingsOptions = {}): Promise<Ratings> {
  const bare = withoutWords(ratedVenue(venue));
  return inWordsOf(venue, await loadBare(bare, options));
}

/** The notes name waters and features; nothing else that is kept does. */
function inWordsOf(venue: RatedVenue, ratings: Ratings): Ratings {
  return { ...ratings, notes: notesOn(venue, ratings.fits) };
}

async function loadBare(venue: RatedVenue, options: LoadRatingsOptions): Promise<Ratings> {
  const folder = options.folder ?? cacheFolder();
  const prefix = `ratings-${nameDigest(venue)}-`;
  const file = join(folder, `${prefix}${await keyOf(venue)}.json`);
  const known = await keptJson<Ratings>(file);
  if (known !== null) return known;
  const workFile = join(folder, `work-${nameDigest(venue)}.json`);
  const code = await codeOfRatings();
  const work = await keptJson<CodedWork>(workFile);
  let kept: KeptWork = {};
  const ratings = await rateInThreads(venue, {
    seed: SEED,
    ...(work?.code === code ? { work: work.work } : {}),
    keepWork: (all) => {
      kept = all;
    },
    ...(options.progress === undefined ? {} : { progress: options.progress }),
  });
  if (Object.keys(kept).length > 0) await keep(folder, workFile, { code, work: kept });
  await keep(folder, file, ratings);
  return ratings;
}

/** The ratings of exactly this log where they were fitted before; null where they were not. Never fits. */
export async function keptRatings(venue: RatedVenue, folder: string = cacheFolder()): Promise<Ratings | null> {
  const bare = withoutWords(ratedVenue(venue));
  const kept = await keptJson<Ratings>(join(folder, `ratings-${nameDigest(bare)}-${await keyOf(bare)}.json`));
  return kept === null ? null : inWordsOf(venue, kept);
}

/** What the last run of a venue kept of its work, for runs of the same code. */
interface CodedWork {
  readonly code: string;
  readonly work: KeptWork;
}

/** Of what stays of a venue while its log grows, and sets it apart from others with waters of the same names: its first match. */
function nameDigest({ settings, waters, events }: RatedVenue): string {
  const stays = [settings.bagParts.map(({ id }) => id), waters.map(({ id }) => id), events[0]?.id, events[0]?.day];
  return digestOf(JSON.stringify(stays)).slice(0, 12);
}

function codeOfRatings(): Promise<string> {
  return codeDigest(projectRoot(), 'src/ratings/rate-venue.ts');
}

/** A digest of everything a fit depends on: the content it reads, the seed, the code, its libraries and Node. */
async function keyOf(venue: RatedVenue): Promise<string> {
  return digestOf(JSON.stringify([SEED, await codeOfRatings(), venue])).slice(0, 32);
}

async function keep(folder: string, file: string, content: Ratings | CodedWork): Promise<void> {
  if (await keepJson(file, content)) await dropOld(folder, basename(file).slice(0, 'ratings-'.length + 12));
}

async function dropOld(folder: string, prefix: string): Promise<void> {
  const names = await newestFirst(folder);
  const old = new Set([
    ...names.filter((name) => name.startsWith(prefix)).slice(KEPT),
    ...names.slice(KEPT_OF_ALL),
    ...(await newestFirst(folder, 'work')).slice(KEPT_WORK),
  ]);
  await Promise.all([...old].map((name) => rm(join(folder, name), { force: true })));
}

/** Names of the kept files; none where the folder cannot be read. */
async function newestFirst(folder: string, kind: 'ratings' | 'work' = 'ratings'): Promise<string[]> {
  try {
    const files = (await readdir(folder)).filter((name) => new RegExp(`^${kind}-[0-9a-f-]+\\.json$`).test(name));
    const dated = await Promise.all(
      files.map(async (name) => ({ name, time: (await stat(join(folder, name))).mtimeMs })),
    );
    return dated.sort((a, b) => b.time - a.time || (a.name < b.name ? -1 : 1)).map(({ name }) => name);
  } catch {
    return [];
  }
}
