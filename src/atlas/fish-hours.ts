import { countWords } from '../domain/count-words.ts';
import { MONTHS, type Month, monthOf } from '../domain/day.ts';
import { gramsByHour, hoursKey } from '../domain/hour-weight.ts';
import { INTERVAL_WORDS } from '../domain/interval-level.ts';
import { matchOf } from '../domain/session.ts';
import type { Venue } from '../domain/venue.ts';
import { type HourBag, type HourShare, hourShares } from '../ratings/hour-shares.ts';
import { monthWords } from '../words/day-words.ts';
import { inEnglish, type Say } from '../words/say.ts';
import { hourBars } from './drawing/hour-bars.ts';

/** When the fish came in one month and the two about it. */
export interface FishHoursMonth {
  readonly month: Month;
  /** "October to December: from 24 bags of 9 matches". */
  readonly from: string;
  /** Null where nobody logged hours in those months. */
  readonly drawing: string | null;
  /** The same in words, with intervals. */
  readonly words: string;
}

/** When the fish came in one month and the two about it, in figures. */
export interface MonthHours {
  readonly month: Month;
  /** "October to December". */
  readonly about: string;
  readonly bags: number;
  /** Bags of those months that are not in it: their matches were of another length. */
  readonly otherLength: number;
  readonly matches: number;
  /** How long each match was: the last of its hours is a part of one where this is no whole number. */
  readonly matchHours: number;
  readonly isThin: boolean;
  /** By hour of the match. */
  readonly shares: readonly HourShare[];
}

/** When the fish came on a water. */
export interface FishHours {
  readonly nowMonth: Month;
  /** Empty where nobody has logged hours here. */
  readonly months: readonly FishHoursMonth[];
  /** What was logged and is not in it; empty where all is. */
  readonly leftOut: string;
}

/** Fewer matches than these are told as thin (our own choice: a bootstrap over less says too narrow an interval). */
const THIN_MATCHES = 8;

interface LoggedBag extends HourBag {
  readonly month: Month;
  /** How long its match was. */
  readonly hours: number;
}

/** Puts together when the fish came on a water, month by month: the matches of the length most usual in each. */
export function fishHours(venue: Venue, water: string): FishHours {
  const nowMonth = monthOf(venue.settings.guideDay);
  const { matches, chosen } = loggedBags(venue, water);
  return {
    nowMonth,
    months: matches.length === 0 ? [] : MONTHS.map((month) => monthView(month, matches)),
    leftOut:
      chosen === 0
        ? ''
        : `Not in it: ${countWords(chosen, 'bag')} of chosen days, whose hours begin when the angler came.`,
  };
}

/** When the fish came in each month of which anybody logged hours, as plain figures. */
export function hoursByMonth(venue: Venue, water: string, say: Say = inEnglish): readonly MonthHours[] {
  const { matches } = loggedBags(venue, water);
  return MONTHS.flatMap((month) => hoursOfMonth(month, matches, say) ?? []);
}

/** The bags of matches that last as long as most. */
function usualLength(matches: readonly LoggedBag[]): readonly LoggedBag[] {
  // By the length itself: the fifth hour of four and a half is a half one, and its share is no share of an hour.
  const byLength = Map.groupBy(matches, ({ hours }) => hours);
  return [...byLength].sort(([a, one], [b, other]) => other.length - one.length || a - b)[0]?.[1] ?? [];
}

function loggedBags(venue: Venue, water: string): { readonly matches: readonly LoggedBag[]; readonly chosen: number } {
  const events = new Map(venue.events.filter((event) => event.water === water).map((event) => [event.id, event]));
  const matches: LoggedBag[] = [];
  let chosen = 0;
  for (const rows of Map.groupBy(venue.hours ?? [], hoursKey).values()) {
    const event = events.get(rows[0]!.event);
    if (event === undefined) continue;
    if (event.kind !== 'match') chosen++;
    else {
      matches.push({
        match: matchOf(event),
        month: monthOf(event.day),
        gramsByHour: gramsByHour(rows, event.hours),
        hours: event.hours,
      });
    }
  }
  return { matches, chosen };
}

function monthView(month: Month, bags: readonly LoggedBag[]): FishHoursMonth {
  const told = hoursOfMonth(month, bags, inEnglish);
  const names = aboutWords(month, inEnglish);
  if (told === null) return { month, from: '', drawing: null, words: `Nobody has logged hours here in ${names}.` };
  const { matches, shares, isThin, matchHours, otherLength } = told;
  const words = shares.map(shareWords).join(', ');
  const shortHour = Number.isInteger(matchHours)
    ? ''
    : ` ${matches === 1 ? 'It' : 'They'} lasted ${matchHours} hours: hour ${shares.length} is ${Math.round((matchHours % 1) * 60)} minutes.`;
  const other = otherLength === 0 ? '' : ` Not in it: ${countWords(otherLength, 'bag')} of matches of another length.`;
  const thin = isThin ? ' Thin: so few matches may mislead.' : '';
  return {
    month,
    from: `${names}: from ${countWords(told.bags, 'bag')} of ${matches === 1 ? 'one match' : `${matches} matches`}.${shortHour}${other}${thin}`,
    drawing: hourBars(shares, isThin, `Share of the bag by hour of the match, ${names}`),
    words: `Of a bag came in ${words}${shares[0]!.interval === null ? '; too few matches for an interval' : ''}.`,
  };
}

/** The months that tell of one: it and its neighbours. */
function monthsAbout(month: Month): readonly Month[] {
  return [(month + 10) % 12, month - 1, month % 12].map((index) => MONTHS[index]!);
}

/** "October to December". */
function aboutWords(month: Month, say: Say): string {
  const about = monthsAbout(month);
  return say('unknown.span', { first: monthWords(about[0]!, say), last: monthWords(about[2]!, say) });
}

/** Of one month and its neighbours; null where nobody logged hours in them. */
function hoursOfMonth(month: Month, bags: readonly LoggedBag[], say: Say): MonthHours | null {
  const about = monthsAbout(month);
  const all = bags.filter((bag) => about.includes(bag.month) && bag.gramsByHour.some((grams) => grams > 0));
  const near = usualLength(all);
  if (near.length === 0) return null;
  const matches = new Set(near.map(({ match }) => match)).size;
  return {
    month,
    about: aboutWords(month, say),
    bags: near.length,
    otherLength: all.length - near.length,
    matches,
    matchHours: near[0]!.hours,
    isThin: matches < THIN_MATCHES,
    shares: hourShares(near, month),
  };
}

function shareWords({ share, interval }: HourShare, index: number): string {
  const percent = (value: number) => `${Math.round(value * 100)}`;
  const reach = interval === null ? '' : ` (${percent(interval[0])} to ${percent(interval[1])})`;
  return `hour ${index + 1} ${percent(share)}%${reach}`;
}

/** What the fine lines mean, under the drawing. */
export const HOURS_LEGEND = `From what anglers noted on the bank and handed to the club: each bag counts alike. Fine lines: ${INTERVAL_WORDS} interval of the mean, by drawing matches anew. They tell of those who noted, not of every peg.`;
