import type { Units } from '../domain/bag.ts';
import { countWords } from '../domain/count-words.ts';
import { MONTHS, type Month, monthName } from '../domain/day.ts';
import { isCurrent } from '../domain/hazard.ts';
import { formatLength } from '../domain/length.ts';
import { nameOf } from '../domain/name-of.ts';
import { type Peg, pegKey } from '../domain/peg.ts';
import { formatDistance } from '../domain/place-words.ts';
import type { Walk } from '../ground/survey.ts';
import type { BagId } from '../ratings/ratings.ts';
import { type Atlas, surveyOfPeg } from './atlas.ts';
import { noDepthWords } from './depth-words.ts';
import { walksWorthTelling } from './peg-bank.ts';
import { isClosedForEver, type PegStanding, standingOfPeg } from './peg-verdicts.ts';
import { type BagWorths, bagWorths } from './peg-worths.ts';
import { pegLink } from './site-link.ts';
import type { WorthWords } from './worth-words.ts';

/** One peg as a line of a table. */
export interface PegLine {
  readonly peg: string;
  readonly href: string;
  /** "South bank, in the corner", "Corner, near shelf", "2 hazards, walk 140 m, step-free". */
  readonly words: { readonly where: string; readonly features: string; readonly walk: string };
  readonly standing: PegStanding;
  /** "Depth at 11 m" in figures, or why there is none. */
  readonly depth: string;
  /** January first. */
  readonly months: readonly { readonly month: Month; readonly name: string; readonly known: WorthWords | null }[];
  /** What the reader may order and choose by. */
  readonly order: {
    readonly depthMetres: number | null;
    readonly walkMetres: number | null;
    readonly stepFree: boolean | null;
    readonly features: readonly string[];
    /** By bag, January first; null of a peg that is closed on every day. */
    readonly worths: Readonly<Record<string, readonly (WorthInOrder | null)[]>> | null;
  };
}

/** What a peg is worth, as it is shown, and how sure that is in words; not told again of the total, which the table shows. */
export type WorthInOrder = readonly [worth: number, doubt?: string];

/** The line of the trade whose depth stands in tables of pegs. */
const TABLE_LINE = 'pole-11';

/** The pegs of a water as lines, in the order of their numbers. */
export function pegLines(atlas: Atlas, water: string): readonly PegLine[] {
  const bags = bagWorths(atlas);
  return (atlas.pegsByWater.get(water) ?? []).map((peg) => pegLine(atlas, peg, bags));
}

function pegLine(atlas: Atlas, peg: Peg, bags: readonly BagWorths[]): PegLine {
  const { units, features } = atlas.venue.settings;
  const key = pegKey(peg.water, peg.peg);
  const survey = surveyOfPeg(atlas, key);
  const line = survey.lineDepths.find(({ id }) => id === TABLE_LINE);
  const walk = walksWorthTelling(survey).at(-1);
  const total = bags.find(({ bag }) => bag === 'total')?.of(peg) ?? [];
  const standing = standingOfPeg(atlas, peg);
  return {
    peg: peg.peg,
    href: pegLink(peg.water, peg.peg),
    words: {
      where: peg.where ?? '',
      features: peg.features.map((id) => nameOf(features, id)).join(', '),
      walk: walkWords(peg, walk, units),
    },
    standing,
    depth:
      line?.depthMetres === null || line === undefined
        ? noDepthWords(line?.why)
        : formatLength(line.depthMetres, units),
    months: MONTHS.map((month) => ({ month, name: monthName(month), known: total[month - 1] ?? null })),
    order: {
      depthMetres: line?.depthMetres ?? null,
      walkMetres: walk?.distanceMetres ?? null,
      stepFree: walk?.stepFree ?? null,
      features: peg.features,
      worths: isClosedForEver(standing)
        ? null
        : Object.fromEntries(bags.map(({ bag, of }) => [bag, of(peg).map((known) => worthInOrder(bag, known))])),
    },
  };
}

function worthInOrder(bag: BagId, known: WorthWords | null): WorthInOrder | null {
  if (known === null) return null;
  const { middle, low, high, evidence } = known;
  return bag === 'total' ? [Number(middle)] : [Number(middle), `(${low}–${high}), ${evidence}`];
}

function walkWords(peg: Peg, walk: Walk | undefined, units: Units): string {
  const hazards = peg.hazards.filter(isCurrent).length;
  return [
    ...(hazards === 0 ? [] : [countWords(hazards, 'hazard')]),
    walk === undefined ? 'walk not known' : `walk ${formatDistance(walk.distanceMetres, units)}`,
    ...(walk?.stepFree === true ? ['step-free'] : []),
  ].join(', ');
}
