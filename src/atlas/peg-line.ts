import { MONTHS, type Month, monthName } from '../domain/day.ts';
import { formatLength } from '../domain/length.ts';
import { type Peg, pegKey } from '../domain/peg.ts';
import { formatDistance } from '../domain/place-words.ts';
import { type Atlas, surveyOfPeg } from './atlas.ts';
import { walksWorthTelling } from './peg-bank.ts';
import { closedSinceWords } from './peg-safety.ts';
import { type ReturnWords, returnWords } from './return-words.ts';
import { pegLink } from './site-link.ts';

/** One peg as a line of a table. */
export interface PegLine {
  readonly peg: string;
  readonly href: string;
  readonly where: string;
  readonly features: readonly string[];
  /** "Closed since 2 Feb 2026: the 11 kV line …"; null while open. */
  readonly closed: string | null;
  /** "Depth at 11 m" in figures, or why there is none. */
  readonly depth: string;
  /** "140 m, step-free". */
  readonly walk: string;
  readonly stepFree: boolean;
  readonly hazards: number;
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
    where: peg.where ?? '',
    features: peg.features.map((id) => features.find((feature) => feature.id === id)?.name ?? id),
    closed:
      peg.status === 'closed'
        ? `${closedSinceWords(peg.statusSince)}: ${peg.statusReason ?? 'no reason is on record'}`
        : null,
    depth:
      line?.depthMetres === null || line === undefined
        ? (line?.why ?? 'not plumbed')
        : formatLength(line.depthMetres, units),
    walk: walk === undefined ? 'not known' : formatDistance(walk.distanceMetres, units),
    stepFree: walk?.stepFree === true,
    hazards: peg.hazards.filter(({ clearedOn }) => clearedOn === undefined).length,
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
