import { createHash } from 'node:crypto';
import { mkdir, readdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { rateVenue } from '../ratings/rate-venue.ts';
import { type RatedVenue, ratedVenue } from '../ratings/rated-venue.ts';
import type { Ratings } from '../ratings/ratings.ts';
import { projectRoot } from './project-root.ts';

/** Of the simulated fields: any number does, as long as it stays the same. */
const SEED = 20_261_121;
/** Fits kept: a few venues, or a few states of one. */
const KEPT = 12;

export interface LoadRatingsOptions {
  /** Told what is being fitted; silent where the fit was kept. */
  readonly progress?: (what: string) => void;
  /** Where fits are kept; inside the project's `node_modules` unless a test says otherwise. */
  readonly folder?: string;
}

/**
 * The ratings of a venue: read back where this log was fitted before by this code, fitted and kept otherwise. A kept
 * file that is not whole, or that cannot be read or written, only costs the time of a fit.
 */
export async function loadRatings(venue: RatedVenue, options: LoadRatingsOptions = {}): Promise<Ratings> {
  const root = projectRoot();
  const folder = options.folder ?? join(root, 'node_modules', '.cache', 'peg-atlas');
  const file = join(folder, `ratings-${await keyOf(venue, join(root, 'src', 'ratings'))}.json`);
  const kept = await readKept(file);
  if (kept !== null) return kept;
  const ratings = rateVenue(venue, {
    seed: SEED,
    ...(options.progress === undefined ? {} : { progress: options.progress }),
  });
  await keep(folder, file, ratings);
  return ratings;
}

/** A digest of everything a fit depends on: the content it reads, the seed and the code. */
async function keyOf(venue: RatedVenue, code: string): Promise<string> {
  const hash = createHash('sha256');
  hash.update(JSON.stringify([SEED, ratedVenue(venue)]));
  const entries = await readdir(code, { recursive: true });
  for (const entry of entries.filter((name) => name.endsWith('.ts')).sort()) {
    hash.update(`\0${entry}\0`).update(await readFile(join(code, entry)));
  }
  return hash.digest('hex').slice(0, 32);
}

async function readKept(file: string): Promise<Ratings | null> {
  try {
    const text = await readFile(file, 'utf8');
    const end = text.indexOf('\n');
    const json = text.slice(end + 1);
    return end > 0 && text.slice(0, end) === digestOf(json) ? (JSON.parse(json) as Ratings) : null;
  } catch {
    return null;
  }
}

/** Written beside its place and then moved there, so that no reader ever meets half a file. */
async function keep(folder: string, file: string, ratings: Ratings): Promise<void> {
  const json = JSON.stringify(ratings);
  const unfinished = `${file}.${process.pid}`;
  try {
    await mkdir(folder, { recursive: true });
    await writeFile(unfinished, `${digestOf(json)}\n${json}`);
    await rename(unfinished, file);
    await dropOld(folder);
  } catch {
    // A disk that is full or read-only: the ratings stand, they are only not kept.
    await rm(unfinished, { force: true }).catch(() => undefined);
  }
}

async function dropOld(folder: string): Promise<void> {
  const files = (await readdir(folder)).filter((name) => /^ratings-[0-9a-f]+\.json$/.test(name));
  const dated = await Promise.all(
    files.map(async (name) => ({ name, time: (await stat(join(folder, name))).mtimeMs })),
  );
  const old = dated.sort((a, b) => b.time - a.time).slice(KEPT);
  await Promise.all(old.map(({ name }) => rm(join(folder, name), { force: true })));
}

function digestOf(json: string): string {
  return createHash('sha256').update(json).digest('hex');
}
