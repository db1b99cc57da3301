import { MONTHS, type Month, monthOf } from '../domain/day.ts';
import { nameOf } from '../domain/name-of.ts';
import { type Peg, pegKey } from '../domain/peg.ts';
import { type Say, sayIn } from '../words/say.ts';
import { askedDepths } from './asked-lines.ts';
import { type Atlas, surveyOfPeg, surveyOfWater, waterOf } from './atlas.ts';
import { bagPlan } from './bag-plan.ts';
import { walksWorthTelling, walkWords } from './peg-bank.ts';
import { type PegMention, pegMention } from './peg-mention.ts';
import { limitWords, pegSafety } from './peg-safety.ts';
import { isClosedForEver } from './peg-verdicts.ts';
import { type BagWorths, bagWorths } from './peg-worths.ts';

/** One line of a bag or of what a peg is worth: "Total", "12 lb", "7 lb to 20 lb". */
export interface ComparedFigure {
  readonly name: string;
  readonly middle: string;
  readonly range: string;
  readonly evidence: string;
}

/** What a peg gives in one month. */
export interface ComparedMonth {
  readonly month: Month;
  readonly bag: readonly ComparedFigure[];
  readonly chance: string;
  readonly worths: readonly ComparedFigure[];
}

/** One peg, as it stands beside others. */
export interface ComparedPeg extends PegMention {
  readonly where: string;
  readonly limits: readonly string[];
  /** What can hurt someone there, worst first. */
  readonly dangers: readonly string[];
  readonly features: string;
  readonly depths: readonly { readonly name: string; readonly words: string }[];
  /** English in every guide: it may pass an overhead line. Null where none is known. */
  readonly walk: string | null;
  /** None of a peg that is closed on every day. */
  readonly months: readonly ComparedMonth[];
}

/** The pegs of a water side by side. */
export interface ComparePage {
  readonly id: string;
  readonly name: string;
  readonly month: Month;
  /** "Depths of 20 Nov." or "Depths below datum." */
  readonly depthsOf: string;
  readonly pegs: readonly ComparedPeg[];
}

/** Puts together the page that sets pegs of one water side by side; across waters a worth has no common measure. */
export function comparePage(atlas: Atlas, water: string): ComparePage {
  const { level } = surveyOfWater(atlas, water);
  const bags = bagWorths(atlas);
  const say = sayIn(atlas.venue.settings.language);
  return {
    id: water,
    name: waterOf(atlas, water).name,
    month: monthOf(atlas.venue.settings.guideDay),
    depthsOf: say(level === null ? 'compare.depthsBelowDatum' : 'compare.depthsByGauge'),
    pegs: (atlas.pegsByWater.get(water) ?? []).map((peg) => comparedPeg(atlas, peg, bags, level?.metres ?? 0, say)),
  };
}

function comparedPeg(atlas: Atlas, peg: Peg, bags: readonly BagWorths[], levelMetres: number, say: Say): ComparedPeg {
  const { settings } = atlas.venue;
  const survey = surveyOfPeg(atlas, pegKey(peg.water, peg.peg));
  const mention = pegMention(atlas, peg);
  const [walk] = walksWorthTelling(survey);
  return {
    ...mention,
    where: peg.where ?? '',
    limits: limitWords(peg, settings),
    dangers: pegSafety(atlas, peg).map(({ title }) => title),
    features: peg.features.map((id) => nameOf(settings.features, id)).join(', '),
    depths: askedDepths(survey, settings.units, levelMetres, say),
    walk: walk === undefined ? null : `From ${walk.from}: ${walkWords(walk, settings.units)}`,
    months: isClosedForEver(mention.standing) ? [] : monthsOf(atlas, peg, bags, say),
  };
}

function monthsOf(atlas: Atlas, peg: Peg, bags: readonly BagWorths[], say: Say): readonly ComparedMonth[] {
  const plan = bagPlan(atlas, pegKey(peg.water, peg.peg));
  const worths = bags.map(({ bag, name, of }) => ({
    name: bag === 'total' ? say('compare.totalBag') : name,
    months: of(peg),
  }));
  return MONTHS.map((month, index) => {
    const expected = plan?.months.find((each) => each.month === month);
    return {
      month,
      bag: (expected?.rows ?? []).map(({ name, low, middle, high }) => ({
        name,
        middle,
        range: say('range', { low, high }),
        evidence: expected?.evidence ?? 'thin',
      })),
      chance: expected?.chance ?? '',
      worths: worths.flatMap(({ name, months }) => {
        const known = months[index] ?? null;
        if (known === null) return [];
        return [
          {
            name,
            middle: known.middle,
            range: say('range', { low: known.low, high: known.high }),
            evidence: known.evidence,
          },
        ];
      }),
    };
  });
}
