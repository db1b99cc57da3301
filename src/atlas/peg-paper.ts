import { monthOf } from '../domain/day.ts';
import { nameOf } from '../domain/name-of.ts';
import { type Peg, pegKey } from '../domain/peg.ts';
import { monthWords } from '../words/day-words.ts';
import { sayIn } from '../words/say.ts';
import { askedDepths } from './asked-lines.ts';
import { type Atlas, surveyOfPeg, waterOf } from './atlas.ts';
import { type BagPlanRow, bagPlan } from './bag-plan.ts';
import { closureSign } from './drawing/closure-sign.ts';
import { safetySign } from './drawing/safety-sign.ts';
import { pegCode } from './peg-code.ts';
import { type PegEmergency, pegEmergency } from './peg-emergency.ts';
import { limitWords, pegSafety, type SafetyEntry } from './peg-safety.ts';
import { isClosedForEver, type PegStanding, standingOfPeg } from './peg-verdicts.ts';
import { pegLink } from './site-link.ts';

/** One peg as it is printed: its card for the pocket and its plate for the post. */
export interface PaperPeg {
  readonly peg: string;
  readonly href: string;
  readonly where: string;
  readonly standing: PegStanding;
  /** Those that no sign of the plate tells already. */
  readonly limits: readonly string[];
  readonly features: string;
  readonly dangers: readonly Pick<SafetyEntry, 'sign' | 'title'>[];
  readonly depths: readonly { readonly name: string; readonly words: string }[];
  /** Of the month of the guide's day; null where the log gives none or the peg is closed on every day. */
  readonly bag: { readonly month: string; readonly rows: readonly BagPlanRow[]; readonly frame: string | null } | null;
  readonly emergency: PegEmergency;
  /** The code of its sheet's address and that address in words; null where the venue states no address. */
  readonly code: { readonly svg: string; readonly words: string } | null;
  /** Signs of a plate: closed, or each overhead line the sheet warns of. */
  readonly plateSigns: readonly { readonly svg: string; readonly words: string }[];
}

/**
 * The pegs of a water for paper, in the order of their numbers.
 * @param site the origin that the guide is published at; undefined where none is stated
 */
export function paperPegs(atlas: Atlas, water: string, site: URL | undefined): readonly PaperPeg[] {
  return (atlas.pegsByWater.get(water) ?? []).map((peg) => paperPeg(atlas, peg, site));
}

function paperPeg(atlas: Atlas, peg: Peg, site: URL | undefined): PaperPeg {
  const { settings } = atlas.venue;
  const say = sayIn(settings.language);
  const key = pegKey(peg.water, peg.peg);
  const survey = surveyOfPeg(atlas, key);
  const { name } = waterOf(atlas, peg.water);
  const standing = standingOfPeg(atlas, peg);
  const dangers = pegSafety(atlas, peg);
  const href = pegLink(peg.water, peg.peg);
  const plateSigns =
    standing.closed === null
      ? dangers
          .filter(({ sign }) => sign === 'W012')
          .map(({ sign, title }) => ({ svg: safetySign(sign), words: title }))
      : [{ svg: closureSign(), words: 'Not to be fished.' }];
  return {
    peg: peg.peg,
    href,
    where: peg.where ?? '',
    standing,
    limits: limitWords(peg, settings).filter((limit) => !plateSigns.some(({ words }) => words.includes(limit))),
    features: peg.features.map((id) => nameOf(settings.features, id)).join(', '),
    dangers: dangers.map(({ sign, title }) => ({ sign, title })),
    depths: askedDepths(survey, settings.units, 0, say),
    bag: isClosedForEver(standing) ? null : bagNow(atlas, peg),
    emergency: pegEmergency(peg, name, survey, atlas.venue),
    code: site === undefined ? null : codeOf(new URL(href, site), say('paper.codeOf', { peg: `${name} ${peg.peg}` })),
    plateSigns,
  };
}

function codeOf(address: URL, label: string): NonNullable<PaperPeg['code']> {
  return {
    svg: pegCode(address.href, label),
    words: address.href.replace(/^https?:\/\//, '').replace(/\/$/, ''),
  };
}

function bagNow(atlas: Atlas, peg: Peg): PaperPeg['bag'] {
  const { guideDay, language } = atlas.venue.settings;
  const month = monthOf(guideDay);
  const found = bagPlan(atlas, pegKey(peg.water, peg.peg))?.months.find((each) => each.month === month);
  return found === undefined
    ? null
    : { month: monthWords(month, sayIn(language)), rows: found.rows, frame: found.frame?.typical ?? null };
}
