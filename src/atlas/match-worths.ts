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
import { digestOf, keepJson, keptJson } from './kept-json.ts';
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
  const kept = await keptJson<readonly SectionWorth[]>(file);
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
  await keepJson(file, worths);
  return worths;
}
