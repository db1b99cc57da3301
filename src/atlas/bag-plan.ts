import type { Units } from '../domain/bag.ts';
import { MONTHS, type Month, monthName, monthOf } from '../domain/day.ts';
import type { PegKey } from '../domain/peg.ts';
import type { Evidence, ExpectedBag, FramingMakeUp, FramingMonth, Quartiles } from '../ratings/ratings.ts';
import type { Atlas } from './atlas.ts';
import { chanceWords } from './chance-words.ts';
import { expectedWeight } from './expected-weight.ts';

/** One row of the plan: a bag part, or the total as the last. */
export interface BagPlanRow {
  readonly name: string;
  readonly low: string;
  readonly middle: string;
  readonly high: string;
}

/** What to expect at a peg in one month, and the weight to aim at. */
export interface BagPlanMonth {
  readonly month: Month;
  readonly name: string;
  readonly evidence: Evidence;
  readonly rows: readonly BagPlanRow[];
  /** "To frame 41 lb (34 lb to 52 lb) …"; null where no event of that month says. */
  readonly aim: string | null;
  /** "1 in 6 frames from here; the draw alone gives 1 in 4." */
  readonly chance: string;
  /** "No carp at all in 3 sessions of 10." Empty where it hardly happens. */
  readonly without: string;
  /** "Framing bags in November: 62% carp, 38% silvers (14 bags logged by parts)." */
  readonly makeUp: string | null;
}

export interface BagPlan {
  readonly months: readonly BagPlanMonth[];
  readonly nowMonth: Month;
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
  return { months, nowMonth: monthOf(atlas.venue.settings.guideDay) };
}

function planOfMonth(atlas: Atlas, bag: ExpectedBag): BagPlanMonth {
  const { units, bagParts } = atlas.venue.settings;
  const nameOf = (part: string) => bagParts.find(({ id }) => id === part)?.name ?? part;
  const inMonth = (row: { readonly water: string; readonly month: Month }) =>
    row.water === bag.water && row.month === bag.month;
  const row = (name: string, { lowKg, middleKg, highKg }: Quartiles): BagPlanRow => ({
    name,
    low: expectedWeight(lowKg, units.weight),
    middle: expectedWeight(middleKg, units.weight),
    high: expectedWeight(highKg, units.weight),
  });
  return {
    month: bag.month,
    name: monthName(bag.month),
    evidence: bag.evidence,
    rows: [...bag.parts.map(({ part, bag: expected }) => row(nameOf(part), expected)), row('Total', bag.total)],
    aim: aimWords(atlas.ratings.framing.find(inMonth), units.weight),
    chance: framesWords(bag.chanceToFrame, bag.chanceByDraw),
    without: bag.parts
      .filter(({ chanceOfNone }) => chanceOfNone >= WORTH_SAYING)
      .map(({ part, chanceOfNone }) => `No ${nameOf(part).toLowerCase()} at all in ${sessionsInTen(chanceOfNone)}.`)
      .join(' '),
    makeUp: makeUpWords(atlas.ratings.framingMakeUp.find(inMonth), nameOf),
  };
}

/** Weight to frame and to win, each with the range over the month's events. */
export function aimWords(framing: FramingMonth | undefined, unit: Units['weight']): string | null {
  if (framing === undefined || framing.frameKg === null) return null;
  const weight = (kilograms: number) => expectedWeight(kilograms, unit);
  const range = (low: number | null, high: number | null) =>
    low === null || high === null || low === high ? '' : ` (${weight(low)} to ${weight(high)})`;
  const frame = `To frame ${weight(framing.frameKg)}${range(framing.frameLowKg, framing.frameHighKg)}`;
  const win =
    framing.winKg === null ? '' : `, to win ${weight(framing.winKg)}${range(framing.winLowKg, framing.winHighKg)}`;
  return `${frame}${win}; from ${framing.events === 1 ? '1 event' : `${framing.events} events`} in ${monthName(framing.month)}.`;
}

/** What the framing bags of a month were made of, largest share first; null where none was logged by parts. */
export function makeUpWords(makeUp: FramingMakeUp | undefined, nameOf: (part: string) => string): string | null {
  if (makeUp === undefined || makeUp.bags === 0) return null;
  const shares = [...makeUp.shares]
    .sort((a, b) => b.share - a.share)
    .map(({ part, share }) => `${Math.round(share * 100)}% ${nameOf(part).toLowerCase()}`);
  const bags = makeUp.bags === 1 ? '1 bag' : `${makeUp.bags} bags`;
  return `Framing bags in ${monthName(makeUp.month)}: ${shares.join(', ')} (${bags} logged by parts).`;
}

function sessionsInTen(chance: number): string {
  const tenths = Math.round(chance * 10);
  if (tenths === 0) return '1 session of 20';
  return tenths >= 10 ? 'nearly every session' : `${tenths} ${tenths === 1 ? 'session' : 'sessions'} of 10`;
}

/** "1 in 6 frames from here; the draw alone gives 1 in 4." Where the words are the same: "1 in 5 frames from here, as by the draw alone." */
function framesWords(fromHere: number, byDraw: number): string {
  const [here, draw] = [chanceWords(fromHere), chanceWords(byDraw)];
  const start = here.charAt(0).toUpperCase() + here.slice(1);
  const verb = /^(1 in|nearly)/.test(here) ? 'frames' : 'frame';
  return here === draw
    ? `${start} ${verb} from here, as by the draw alone.`
    : `${start} ${verb} from here; the draw alone gives ${draw}.`;
}
