import { createHash } from 'node:crypto';
import { mkdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { monthOf } from '../domain/day.ts';
import type { Match } from '../domain/match.ts';
import { type SectionWorth, sectionWorths } from '../planning/section-worths.ts';
import { drawWorth } from '../planning/worth-draws.ts';
import { jointPegWorth } from '../ratings/joint-worth.ts';
import { ratedVenue } from '../ratings/rated-venue.ts';
import { type Atlas, pegOf } from './atlas.ts';
import { cacheFolder } from './cache-folder.ts';
import { codeDigest } from './code-digest.ts';
import { projectRoot } from './project-root.ts';

/** Of the draws: the same folder gives the same page. */
const SEED = 20_261_206;
const DRAWS = 2000;

/**
 * What the log says of each section of a planned match, in the order of its plan. It takes a fit of the log, so it is kept
 * beside the ratings; a kept file that cannot be read or written only costs that time.
 */
export async function matchWorths(
  atlas: Atlas,
  match: Match,
  folder = cacheFolder(),
): Promise<readonly SectionWorth[]> {
  const pegs = match.plan.flatMap((section) => section.pegs);
  if (pegs.length === 0) return [];
  const month = monthOf(match.day);
  const code = await codeDigest(projectRoot(), 'src/atlas/match-worths.ts');
  const { dnwLesson, fits } = atlas.ratings;
  const key = digestOf(JSON.stringify([SEED, code, month, match.plan, dnwLesson, fits, ratedVenue(atlas.venue)]));
  const file = join(folder, `match-${key.slice(0, 32)}.json`);
  const kept = await readKept(file);
  if (kept !== null) return kept;
  const joint = jointPegWorth(
    atlas.venue,
    pegs.map((peg) => pegOf(atlas, peg)),
    month,
    atlas.ratings,
  );
  const place = new Map(pegs.map((peg, i) => [peg, i]));
  const plan = match.plan.map((section) => section.pegs.map((peg) => place.get(peg)!));
  const worths = sectionWorths(plan, drawWorth(joint, DRAWS, xoroshiro128plus(SEED)));
  await keep(folder, file, worths);
  return worths;
}

async function readKept(file: string): Promise<readonly SectionWorth[] | null> {
  try {
    const [digest = '', json = ''] = (await readFile(file, 'utf8')).split('\n');
    return digest === digestOf(json) ? (JSON.parse(json) as readonly SectionWorth[]) : null;
  } catch {
    return null;
  }
}

async function keep(folder: string, file: string, worths: readonly SectionWorth[]): Promise<void> {
  const json = JSON.stringify(worths);
  const unfinished = `${file}.${process.pid}`;
  try {
    await mkdir(folder, { recursive: true });
    await writeFile(unfinished, `${digestOf(json)}\n${json}`);
    await rename(unfinished, file);
  } catch {
    await rm(unfinished, { force: true }).catch(() => undefined);
  }
}

function digestOf(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}
