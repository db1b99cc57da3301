import { type Day, MONTHS, type Month, monthOf } from '../domain/day.ts';
import { hoursFished } from '../domain/match.ts';
import { type PegKey, pegKey } from '../domain/peg.ts';
import { placeKey } from '../domain/stand.ts';
import type { PegSurvey } from '../ground/survey.ts';
import type { KnownHours } from '../match-day/pace.ts';
import { MATCHES_FOR_INTERVAL } from '../ratings/hour-shares.ts';
import { quantile } from '../ratings/quantile.ts';
import type { Quartiles } from '../ratings/ratings.ts';
import { sayIn } from '../words/say.ts';
import { type Atlas, surveyOfPeg, waterOf } from './atlas.ts';
import { expectedGrams } from './expected-weight.ts';
import { hoursByMonth, type MonthHours } from './fish-hours.ts';
import { matchLink } from './match-page.ts';
import { type PegMention, pegMention } from './peg-mention.ts';
import { limitWords } from './peg-safety.ts';
import { type NeighbourView, neighboursOf } from './peg-sheet.ts';
import { isClosedForEver, standingOfPeg } from './peg-verdicts.ts';
import { scriptJson } from './script-json.ts';

/** Grams on a poor, a typical and a good day. */
type Bag = readonly [low: number, middle: number, high: number];

/** What the phone needs to tell a drawn peg's bag and pace, as plain data in the page. */
export interface DrawData {
  readonly water: string;
  readonly name: string;
  readonly venue: string;
  readonly weightUnit: 'lb' | 'kg';
  readonly parts: readonly { readonly id: string; readonly name: string }[];
  readonly pegs: Readonly<Record<string, DrawPegData>>;
  /** By month: weight to frame and to win, and the matches behind them. */
  readonly framing: Readonly<Partial<Record<Month, { frame: number; win: number | null; matches: number }>>>;
  /** By month: bags logged in matches, as percentiles in steps of five, and how many. Left out where there are few. */
  readonly logged: Readonly<Partial<Record<Month, { bags: number; percentiles: readonly number[] }>>>;
  /** By month: when the fish came, where enough matches were logged by the hour to tell. */
  readonly hours: Readonly<Partial<Record<Month, DrawHours>>>;
  readonly matches: readonly DrawMatch[];
}

/** The shares of a bag by hour of the match, and what they are from. */
export type DrawHours = Pick<MonthHours, 'about' | 'bags' | 'matches' | 'isThin'> & KnownHours;

/** A peg, by month its bag: the total, then each part in the order of the venue's. Empty months are not known. */
export interface DrawPegData {
  /** Own depths are kept on the phone under it, as the peg sheet does. */
  readonly placeKey: string;
  readonly limits: readonly string[];
  /** The trade's lines that lie on water and may be fished. */
  readonly lines: readonly DrawLine[];
  readonly bags: Readonly<Partial<Record<Month, readonly Bag[]>>>;
}

/** A line of a peg, straight out from it. */
export interface DrawLine {
  readonly id: string;
  readonly name: string;
  readonly metres: number;
  /** Below datum to the centimetre; null where nobody plumbed. */
  readonly depth: number | null;
  /** From the nearest sounding; 0 where it was plumbed there, or there is none. */
  readonly off: number;
}

/** A match of which the club has published the pegs. */
export interface DrawMatch {
  readonly id: string;
  readonly name: string;
  readonly day: Day;
  readonly href: string;
  readonly allIn: string | null;
  readonly hours: number | null;
  readonly pegs: readonly string[];
}

/** A peg as the page names it without a script. */
export interface DrawPeg extends PegMention {
  readonly neighbours: readonly NeighbourView[];
}

export interface DrawPage {
  readonly id: string;
  readonly name: string;
  readonly pegs: readonly DrawPeg[];
  readonly matches: readonly DrawMatch[];
  /** The data as text for a script element: nothing in it can end the element. */
  readonly json: string;
}

/** Fewer bags than this say nothing of where one stands. */
const FEW_BAGS = 10;
const PERCENTILE_STEPS = 20;

/** The page for the day of who has drawn a peg of a water. */
export function drawPage(atlas: Atlas, id: string): DrawPage {
  const data = drawData(atlas, id);
  return {
    id,
    name: data.name,
    pegs: (atlas.pegsByWater.get(id) ?? []).map((peg) => ({
      ...pegMention(atlas, peg),
      neighbours: neighboursOf(atlas, surveyOfPeg(atlas, pegKey(id, peg.peg))),
    })),
    matches: data.matches,
    json: scriptJson(data),
  };
}

/** Puts together what the phone needs. */
export function drawData(atlas: Atlas, id: string): DrawData {
  const { settings } = atlas.venue;
  const pegs = atlas.pegsByWater.get(id) ?? [];
  const aim = (kilograms: number) => expectedGrams(kilograms, settings.units.weight);
  return {
    water: id,
    name: waterOf(atlas, id).name,
    venue: settings.name,
    weightUnit: settings.units.weight,
    parts: settings.bagParts.map(({ id: part, name }) => ({ id: part, name })),
    pegs: Object.fromEntries(
      pegs.map((peg) => [
        peg.peg,
        {
          placeKey: placeKey(peg),
          limits: limitWords(peg, settings),
          lines: linesOf(surveyOfPeg(atlas, pegKey(id, peg.peg))),
          // A closed peg sells nothing.
          bags: isClosedForEver(standingOfPeg(atlas, peg)) ? {} : bagsOf(atlas, pegKey(id, peg.peg)),
        },
      ]),
    ),
    framing: Object.fromEntries(
      atlas.ratings.framing.flatMap(({ water, month, frameKg, winKg, events }) =>
        water === id && frameKg !== null
          ? [[month, { frame: aim(frameKg), win: winKg === null ? null : aim(winKg), matches: events }]]
          : [],
      ),
    ),
    logged: Object.fromEntries(MONTHS.flatMap((month) => loggedIn(atlas, id, month))),
    hours: Object.fromEntries(
      hoursByMonth(atlas.venue, id, sayIn(settings.language))
        .filter(({ matches }) => matches >= MATCHES_FOR_INTERVAL)
        .map(({ month, shares, otherLength: _, ...from }) => [
          month,
          { ...from, shares: shares.map(({ share }) => share) },
        ]),
    ),
    matches: matchesOf(atlas, id),
  };
}

function bagsOf(atlas: Atlas, key: PegKey): DrawPegData['bags'] {
  const { bagParts } = atlas.venue.settings;
  const bag = ({ lowKg, middleKg, highKg }: Quartiles): Bag => [grams(lowKg), grams(middleKg), grams(highKg)];
  return Object.fromEntries(
    (atlas.bagsByPeg.get(key) ?? []).map(({ month, total, parts }) => [
      month,
      [total, ...bagParts.flatMap(({ id }) => parts.find(({ part }) => part === id)?.bag ?? [])].map(bag),
    ]),
  );
}

function linesOf({ lineDepths }: PegSurvey): readonly DrawLine[] {
  const hundredths = (metres: number) => Math.round(metres * 100) / 100;
  return lineDepths
    .filter(({ permitted, why = 'unplumbed' }) => permitted && why === 'unplumbed')
    .map(({ id, name, distanceMetres, depthMetres, nearestSoundingMetres }) => ({
      id,
      name,
      metres: hundredths(distanceMetres),
      depth: depthMetres === null ? null : hundredths(depthMetres),
      off: Math.round(nearestSoundingMetres ?? 0),
    }));
}

/** Percentiles alone leave the phone: they show nobody's bag. Who did not weigh counts as nothing weighed. */
function loggedIn(atlas: Atlas, water: string, month: Month): [Month, { bags: number; percentiles: number[] }][] {
  const bags = (atlas.pegsByWater.get(water) ?? [])
    .flatMap((peg) => atlas.sessionsByPeg.get(pegKey(water, peg.peg)) ?? [])
    .filter(({ event, status }) => {
      const of = atlas.eventsById.get(event);
      const counts = status === 'weighed' || status === 'blank' || status === 'dnw';
      return counts && of?.kind === 'match' && of.listing === 'full' && monthOf(of.day) === month;
    })
    .map(({ weightGrams = 0 }) => weightGrams);
  if (bags.length < FEW_BAGS) return [];
  const percentiles = Array.from({ length: PERCENTILE_STEPS + 1 }, (_, i) =>
    Math.round(quantile(bags, i / PERCENTILE_STEPS)),
  );
  return [[month, { bags: bags.length, percentiles }]];
}

function matchesOf(atlas: Atlas, water: string): readonly DrawMatch[] {
  return (atlas.venue.matches ?? [])
    .filter(({ waters, plan, status }) => waters.includes(water) && plan.length > 0 && status === 'planned')
    .map((match) => ({
      id: match.id,
      name: match.name,
      day: match.day,
      href: matchLink(match.id),
      allIn: match.allIn ?? null,
      hours: hoursFished(match),
      pegs: match.plan
        .flatMap(({ pegs }) => pegs)
        .filter((key) => key.startsWith(`${water}/`))
        .map((key) => key.slice(water.length + 1)),
    }));
}

function grams(kilograms: number): number {
  return Math.round(kilograms * 1000);
}
