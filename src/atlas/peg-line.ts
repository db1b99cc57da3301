import type { Units } from '../domain/bag.ts';
import { countWords } from '../domain/count-words.ts';
import { MONTHS, type Month, monthName } from '../domain/day.ts';
import { formatLength } from '../domain/length.ts';
import { type Peg, pegKey } from '../domain/peg.ts';
import { formatDistance } from '../domain/place-words.ts';
import type { Walk } from '../ground/survey.ts';
import { type Atlas, surveyOfPeg } from './atlas.ts';
import { walksWorthTelling } from './peg-bank.ts';
import { type PegStanding, standingOfPeg } from './peg-verdicts.ts';
import { type ReturnWords, returnWords } from './return-words.ts';
import { pegLink } from './site-link.ts';

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
  readonly months: readonly { readonly month: Month; readonly name: string; readonly known: ReturnWords | null }[];
}

/** The line of the trade whose depth stands in tables of pegs. */
const TABLE_LINE = 'pole-11';

/** The pegs of a water as lines, in the order of their numbers. */
export function pegLines(atlas: Atlas, water: string): readonly PegLine[] {
  return (atlas.pegsByWater.get(water) ?? []).map((peg) => pegLine(atlas, peg));
}

function pegLine(atlas: Atlas, peg: Peg): PegLine {
  const { units, features } = atlas.venue.settings;
  const key = pegKey(peg.water, peg.peg);
  const survey = surveyOfPeg(atlas, key);
  const line = survey.lineDepths.find(({ id }) => id === TABLE_LINE);
  const walk = walksWorthTelling(survey).at(-1);
  const rated = new Map((atlas.monthsByPeg.get(key) ?? []).map((each) => [each.month, each]));
  return {
    peg: peg.peg,
    href: pegLink(peg.water, peg.peg),
    words: {
      where: peg.where ?? '',
      features: peg.features.map((id) => features.find((feature) => feature.id === id)?.name ?? id).join(', '),
      walk: walkWords(peg, walk, units),
    },
    standing: standingOfPeg(atlas, peg),
    depth:
      line?.depthMetres === null || line === undefined
        ? (line?.why ?? 'not plumbed')
        : formatLength(line.depthMetres, units),
    months: MONTHS.map((month) => {
      const found = rated.get(month);
      return {
        month,
        name: monthName(month),
        known:
          found === undefined
            ? null
            : returnWords(
                { value: found.return, low: found.low80, high: found.high80, evidence: found.evidence },
                found.sessions,
              ),
      };
    }),
  };
}

function walkWords(peg: Peg, walk: Walk | undefined, units: Units): string {
  const hazards = peg.hazards.filter(({ clearedOn }) => clearedOn === undefined).length;
  return [
    ...(hazards === 0 ? [] : [countWords(hazards, 'hazard')]),
    walk === undefined ? 'walk not known' : `walk ${formatDistance(walk.distanceMetres, units)}`,
    ...(walk?.stepFree === true ? ['step-free'] : []),
  ].join(', ');
}
