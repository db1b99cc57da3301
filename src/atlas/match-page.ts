import { capitalised } from '../domain/capitalised.ts';
import { countWords } from '../domain/count-words.ts';
import { formatDay, monthName, monthOf } from '../domain/day.ts';
import type { Match } from '../domain/match.ts';
import type { PegKey } from '../domain/peg.ts';
import { pegVerdict } from '../domain/peg-verdict.ts';
import { formatDistance } from '../domain/place-words.ts';
import { closedBecause } from '../domain/verdict-words.ts';
import type { SectionWorth } from '../planning/section-worths.ts';
import { type Atlas, pegOf, waterOf } from './atlas.ts';
import { mapSvg } from './drawing/map-svg.ts';
import type { Point } from './drawing/simplify-line.ts';
import { markdownHtml } from './markdown-html.ts';
import { type PegMention, pegMention } from './peg-mention.ts';
import { limitWords } from './peg-safety.ts';
import { factsOfPeg, verdictOfPeg } from './peg-verdicts.ts';
import { siteLink } from './site-link.ts';
import { roundOfPegs } from './walking-order.ts';
import { waterMap } from './water-map.ts';

/** A peg of a match wherever the match's pages name it. */
export interface MatchPeg extends PegMention {
  readonly key: PegKey;
  readonly waterName: string;
  readonly section: string;
  readonly where: string;
  /** "pole to 11 m, no cast beyond 20 m"; empty where it is not limited. */
  readonly limits: string;
  /** Kept for somebody who needs a peg free of steps: not in the bag. */
  readonly isKept: boolean;
  /** Why it may not be fished on the day of a match to come: not in the bag. Null where it may, and once the match was fished. */
  readonly closedThatDay: string | null;
}

/** A section as its page shows it. */
export interface MatchSectionView {
  readonly name: string;
  /** The name of the water that all its pegs are on; null where somebody put two waters into one section. */
  readonly water: string | null;
  readonly pegs: readonly MatchPeg[];
  /** "1.05 (0.98 to 1.11)" and "26%"; null where the log was not asked. */
  readonly worth: { readonly words: string; readonly best: string } | null;
}

/** The page of a match. */
export interface MatchPage {
  readonly id: string;
  readonly name: string;
  /** "6 Dec 2026, Kiln Pool: 24 entries in 4 sections". */
  readonly words: string;
  /** "Draw 08:30, all in 10:00, all out 15:00." */
  readonly times: string;
  readonly isPlanned: boolean;
  readonly severalWaters: boolean;
  readonly waters: readonly { readonly id: string; readonly name: string }[];
  readonly messageHtml: string;
  readonly sections: readonly MatchSectionView[];
  /** What the sections' worths say together. */
  readonly worthWords: string;
  readonly maps: readonly { readonly name: string; readonly svg: string }[];
  /** The walk that puts the pegs out. */
  readonly walk: { readonly words: string; readonly stops: readonly (MatchPeg & { readonly leg: string })[] };
  readonly kept: readonly MatchPeg[];
  /** Pegs in the bag, by section. */
  readonly bag: readonly MatchPeg[];
  /** Pegs of the plan that may not be fished that day, and what to do; empty where there is none. */
  readonly closedWords: string;
  readonly href: string;
}

/** A line of the list of matches. */
export interface MatchLine {
  readonly name: string;
  readonly href: string;
  readonly words: string;
}

/** All matches of the club, the latest first. */
export function matchLines(atlas: Atlas): readonly MatchLine[] {
  return [...(atlas.venue.matches ?? [])]
    .sort((a, b) => b.day.localeCompare(a.day) || a.id.localeCompare(b.id))
    .map((match) => ({ name: match.name, href: matchLink(match.id), words: headWords(atlas, match) }));
}

/** The page of a match, below the guide's root. */
export function matchLink(id: string, rest = ''): string {
  return siteLink(`matches/${encodeURIComponent(id)}/${rest}`);
}

/** Puts together what the pages of a match show. */
export function matchPage(atlas: Atlas, match: Match, worths: readonly SectionWorth[]): MatchPage {
  const kept = new Set(match.kept);
  const sections = match.plan.map((section, i) => {
    const own = section.pegs.map((key) => ({
      ...matchPeg(atlas, key, section.name, kept.has(key)),
      closedThatDay: closedThatDay(atlas, match, key),
    }));
    const [water = null, ...more] = new Set(own.map(({ waterName }) => waterName));
    return { name: section.name, water: more.length > 0 ? null : water, pegs: own, worth: worthOf(worths[i]) };
  });
  const pegs = sections.flatMap((section) => section.pegs);
  return {
    id: match.id,
    name: match.name,
    words: headWords(atlas, match),
    times: timesOf(match),
    isPlanned: match.plan.length > 0,
    severalWaters: match.waters.length > 1,
    waters: match.waters.map((id) => ({ id, name: waterOf(atlas, id).name })),
    messageHtml: markdownHtml(match.markdown),
    sections,
    worthWords: worthWords(match, worths),
    maps: match.plan.length === 0 ? [] : match.waters.map((water) => sectionMap(atlas, match, water)),
    walk: walkOf(atlas, pegs),
    kept: pegs.filter(({ isKept }) => isKept),
    bag: pegs.filter((peg) => !peg.isKept && peg.closedThatDay === null),
    closedWords: closedWords(match, pegs),
    href: matchLink(match.id),
  };
}

function headWords(atlas: Atlas, match: Match): string {
  const waters = match.waters.map((id) => waterOf(atlas, id).name).join(' and ');
  const sections = match.sections === 1 ? '' : ` in ${countWords(match.sections, 'section')}`;
  return `${formatDay(match.day)}, ${waters}: ${match.entries} entries${sections}`;
}

function timesOf({ draw, allIn, allOut }: Match): string {
  const times = [
    ...(draw === undefined ? [] : [`draw ${draw}`]),
    ...(allIn === undefined ? [] : [`all in ${allIn}`]),
    ...(allOut === undefined ? [] : [`all out ${allOut}`]),
  ].join(', ');
  return times === '' ? '' : `${capitalised(times)}.`;
}

/** A peg as a page of a match names it. */
export function matchPeg(atlas: Atlas, key: PegKey, section: string, isKept: boolean): MatchPeg {
  const peg = pegOf(atlas, key);
  return {
    ...pegMention(atlas, peg),
    key,
    waterName: waterOf(atlas, peg.water).name,
    section,
    where: peg.where ?? '',
    limits: limitWords(peg, atlas.venue.settings).join(', '),
    isKept,
    closedThatDay: null,
  };
}

function closedThatDay(atlas: Atlas, { day, status }: Match, key: PegKey): string | null {
  if (status === 'fished') return null;
  const verdict = pegVerdict(factsOfPeg(atlas, pegOf(atlas, key)), day);
  return verdict.state === 'closed' ? closedBecause(verdict) : null;
}

function closedWords(match: Match, pegs: readonly MatchPeg[]): string {
  const closed = pegs.filter((peg) => peg.closedThatDay !== null);
  if (closed.length === 0) return '';
  const names = closed.map(({ peg, section, closedThatDay: why }) => `${peg} (section ${section}), closed ${why}`);
  return `In the plan, and not to be fished on ${formatDay(match.day)}: ${names.join('; ')}. Not in the bag: the organiser puts another in its place.`;
}

function worthOf(worth: SectionWorth | undefined): MatchSectionView['worth'] {
  if (worth === undefined) return null;
  const { mean, low80, high80, chanceBest } = worth;
  return {
    words: `${mean.toFixed(2)} (${low80.toFixed(2)} to ${high80.toFixed(2)})`,
    best: `${Math.round(chanceBest * 100)}%`,
  };
}

function worthWords(match: Match, worths: readonly SectionWorth[]): string {
  if (worths.length < 2) return '';
  const month = monthName(monthOf(match.day));
  const out = worths.flatMap(({ standsOut }, i) => (standsOut ? [match.plan[i]!.name] : []));
  const meaning = `Worth: what the section’s pegs are worth on average in ${month}, an average peg of its water being 1.00, with the range that holds it four times in five.`;
  const seen =
    out.length === 0
      ? 'Between these sections the log sees no difference.'
      : `The log sees a difference: section ${out.join(' and ')} from the mean of all.`;
  return `${meaning} ${seen}`;
}

/** The map of a water with the pegs of the match and the closed ones, a band along each section. */
function sectionMap(atlas: Atlas, match: Match, water: string): { readonly name: string; readonly svg: string } {
  const drawing = waterMap(atlas, water);
  const inMatch = new Set(match.plan.flatMap(({ pegs }) => pegs));
  const key = (peg: string) => `${water}/${peg}`;
  const at = new Map(drawing.pegs.map(({ peg, x, y }): [PegKey, Point] => [key(peg), [x, y]]));
  const sections = match.plan.map(({ name, pegs }) => ({
    name,
    line: pegs.flatMap((peg) => (at.has(peg) ? [at.get(peg)!] : [])),
  }));
  const closed = new Set(
    (atlas.pegsByWater.get(water) ?? [])
      .filter((peg) => verdictOfPeg(atlas, peg).state === 'closed')
      .map(({ peg }) => peg),
  );
  const label = sections.map(({ name, line }) => `section ${name} with ${countWords(line.length, 'peg')}`).join(', ');
  const svg = mapSvg({
    ...drawing,
    isobaths: [],
    sections,
    pegs: drawing.pegs.filter(({ peg }) => inMatch.has(key(peg)) || closed.has(peg)),
    label: `Map of ${waterOf(atlas, water).name}, north up: ${label}`,
  });
  return { name: waterOf(atlas, water).name, svg };
}

/** The shortest walk past every peg of the match, over all its waters. */
function walkOf(atlas: Atlas, pegs: readonly MatchPeg[]): MatchPage['walk'] {
  if (pegs.length === 0) return { words: '', stops: [] };
  const { units } = atlas.venue.settings;
  const round = roundOfPegs(
    atlas,
    pegs.map(({ key }) => key),
  );
  const byKey = new Map(pegs.map((peg) => [peg.key, peg]));
  const length = formatDistance(round.lengthMetres, units);
  return {
    words: `${round.from === null ? 'From the first peg' : `From ${round.from.name} and back`}, ${length} on foot${round.isProven ? '' : ', the shortest way that was found'}.`,
    stops: round.stops.map(({ peg, legMetres }) => ({
      ...byKey.get(peg)!,
      leg: formatDistance(legMetres, units),
    })),
  };
}
