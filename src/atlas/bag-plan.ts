import type { Units } from '../domain/bag.ts';
import { MONTHS, type Month, monthOf } from '../domain/day.ts';
import { nameOf } from '../domain/name-of.ts';
import type { PegKey } from '../domain/peg.ts';
import type { VenueSettings } from '../domain/venue.ts';
import type { Evidence, ExpectedBag, FramingMakeUp, FramingMonth, Quartiles } from '../ratings/ratings.ts';
import { dayWords, monthWords } from '../words/day-words.ts';
import { type Say, sayIn } from '../words/say.ts';
import type { Atlas } from './atlas.ts';
import { chanceWords } from './chance-words.ts';
import { roomWords } from './day-worths.ts';
import { expectedWeight } from './expected-weight.ts';

/** One row of the plan: the total, then a bag part each. */
export interface BagPlanRow {
  readonly name: string;
  readonly low: string;
  readonly middle: string;
  /** The middle in the unit that the venue does not use; empty of nothing. */
  readonly middleOther: string;
  readonly high: string;
}

/** What to expect at a peg in one month, and the weight to aim at. */
export interface BagPlanMonth {
  readonly month: Month;
  readonly name: string;
  readonly evidence: Evidence;
  readonly rows: readonly BagPlanRow[];
  /** The weight to frame now; null where no match of that month says. */
  readonly frame: FrameWords | null;
  /** "An average angler frames from here once in 6; from any peg, once in 4." */
  readonly chance: string;
  /** "3 sessions in 10: no carp." Empty where it hardly happens. */
  readonly without: string;
  /** "Framing bags in November: 62% carp, 38% silvers (14 bags logged by parts)." */
  readonly makeUp: string | null;
}

/** The weight to frame: `41 lb`, then "(34 lb to 52 lb); to win 58 lb (50 lb to 70 lb). From 4 matches." */
export interface FrameWords {
  readonly typical: string;
  readonly typicalOther: string;
  readonly rest: string;
}

export interface BagPlan {
  readonly months: readonly BagPlanMonth[];
  readonly nowMonth: Month;
  /** By what to multiply for the room beside the peg; null where it did not earn its place. */
  readonly room: string | null;
}

/** A chance of none below this is not worth a sentence. */
const WORTH_SAYING = 0.05;

/** The bag plan of a peg for every month with an expectation; null where the log gives none. */
export function bagPlan(atlas: Atlas, key: PegKey): BagPlan | null {
  const bags = atlas.bagsByPeg.get(key) ?? [];
  if (bags.length === 0) return null;
  const months = MONTHS.flatMap((month) => {
    const bag = bags.find((candidate) => candidate.month === month);
    return bag === undefined ? [] : [planOfMonth(atlas, bag)];
  });
  const { guideDay, language } = atlas.venue.settings;
  return { months, nowMonth: monthOf(guideDay), room: roomWords(atlas.ratings, sayIn(language)) };
}

function planOfMonth(atlas: Atlas, bag: ExpectedBag): BagPlanMonth {
  const { units, bagParts, language } = atlas.venue.settings;
  const say = sayIn(language);
  const partName = (part: string) => nameOf(bagParts, part);
  const inMonth = (row: { readonly water: string; readonly month: Month }) =>
    row.water === bag.water && row.month === bag.month;
  const row = (name: string, { lowKg, middleKg, highKg }: Quartiles): BagPlanRow => ({
    name,
    low: expectedWeight(lowKg, units.weight),
    middle: expectedWeight(middleKg, units.weight),
    middleOther: inOther(middleKg, units.weight),
    high: expectedWeight(highKg, units.weight),
  });
  return {
    month: bag.month,
    name: monthWords(bag.month, say),
    evidence: bag.evidence,
    rows: [
      row(say('answer.total'), bag.total),
      ...bag.parts.map(({ part, bag: expected }) => row(partName(part), expected)),
    ],
    frame: frameWords(atlas.ratings.framing.find(inMonth), units.weight, say),
    chance: chanceToFrameWords(bag.chanceToFrame, bag.chanceByDraw, say),
    without: bag.parts
      .filter(({ chanceOfNone }) => chanceOfNone >= WORTH_SAYING)
      .map(({ part, chanceOfNone }) =>
        say('bag.none', { sessions: sessionsInTen(chanceOfNone, say), part: partName(part).toLowerCase() }),
      )
      .join(' '),
    makeUp: makeUpWords(atlas.ratings.framingMakeUp.find(inMonth), bagParts, say),
  };
}

/** The same in the unit that the venue does not use, for who thinks in it; nothing of nothing. */
function inOther(kilograms: number, unit: Units['weight']): string {
  const words = expectedWeight(kilograms, unit === 'kg' ? 'lb' : 'kg');
  return words === '0' ? '' : words;
}

/** Weight to frame and to win as a sentence, each with the range over the month's matches. */
export function aimWords(framing: FramingMonth | undefined, unit: Units['weight'], say: Say): string | null {
  const words = frameWords(framing, unit, say);
  return framing === undefined || words === null
    ? null
    : say('bag.frame', { month: monthWords(framing.month, say), weight: `${words.typical}${words.rest}` });
}

function frameWords(framing: FramingMonth | undefined, unit: Units['weight'], say: Say): FrameWords | null {
  if (framing === undefined || framing.frameKg === null) return null;
  const weight = (kilograms: number) => expectedWeight(kilograms, unit);
  const range = (low: number | null, high: number | null) =>
    low === null || high === null || low === high ? '' : ` (${say('range', { low: weight(low), high: weight(high) })})`;
  const win =
    framing.winKg === null
      ? ''
      : say('bag.win', { weight: `${weight(framing.winKg)}${range(framing.winLowKg, framing.winHighKg)}` });
  const { events, mostlyFrom } = framing;
  const since = mostlyFrom === null ? '' : sinceWords(mostlyFrom, events, say);
  return {
    typical: weight(framing.frameKg),
    typicalOther: inOther(framing.frameKg, unit),
    rest: `${range(framing.frameLowKg, framing.frameHighKg)}${win}. ${say('bag.fromMatches', { matches: events })}${since}.`,
  };
}

/** Which of a month's events speak of now, where the water fished otherwise once. */
function sinceWords(
  { day, events, levelThen }: NonNullable<FramingMonth['mostlyFrom']>,
  all: number,
  say: Say,
): string {
  const those = events === all ? '' : say('bag.countMost', { events, day: dayWords(day, say) });
  if (levelThen === null) return `${those}, ${say('bag.fishedOtherwise')}`;
  return `${those}${those === '' ? '; ' : ', '}${say('bag.allFromWhen', { level: levelThen.toFixed(2) })}`;
}

/** What the framing bags of a month were made of, largest share first; null where none was logged by parts. */
export function makeUpWords(
  makeUp: FramingMakeUp | undefined,
  bagParts: VenueSettings['bagParts'],
  say: Say,
): string | null {
  if (makeUp === undefined || makeUp.bags === 0) return null;
  const shares = [...makeUp.shares]
    .sort((a, b) => b.share - a.share)
    .map(({ part, share }) => `${Math.round(share * 100)}% ${nameOf(bagParts, part).toLowerCase()}`);
  return say('bag.makeUp', { month: monthWords(makeUp.month, say), shares: shares.join(', '), bags: makeUp.bags });
}

function sessionsInTen(chance: number, say: Say): string {
  const tenths = Math.round(chance * 10);
  if (tenths === 0) return say('bag.oneInTwenty');
  return tenths >= 10 ? say('bag.nearlyEvery') : say('bag.sessionsInTen', { tenths });
}

/** "An average angler frames from here once in 24; from any peg, once in 5." */
function chanceToFrameWords(fromHere: number, byDraw: number, say: Say): string {
  const [here, draw] = [chanceWords(fromHere, say), chanceWords(byDraw, say)];
  return here === draw ? say('bag.framesAlike', { chance: here }) : say('bag.frames', { here, draw });
}
