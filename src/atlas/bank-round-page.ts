import { type RecordBase, venueId } from '../content/round-file/record-version.ts';
import type { Units } from '../domain/bag.ts';
import type { Day } from '../domain/day.ts';
import { isCurrent } from '../domain/hazard.ts';
import { monthSpan } from '../domain/nesting.ts';
import { type Peg, type PegKey, pegKey } from '../domain/peg.ts';
import { formatDistance } from '../domain/place-words.ts';
import { isRescueKit, rescueKitWords } from '../domain/rescue-kit.ts';
import type { PegRound } from '../ground/peg-round.ts';
import { type Atlas, waterOf } from './atlas.ts';
import { type PegMention, pegMention } from './peg-mention.ts';
import { type RoundHazard, type RoundPlace, roundHazard, roundPlaces } from './round-places.ts';
import { scriptJson } from './script-json.ts';
import { siteLink } from './site-link.ts';
import { roundOfWater } from './walking-order.ts';

/** What the script needs of one peg. */
export interface RoundPeg extends RecordBase {
  readonly peg: string;
  readonly hazards: readonly RoundHazard[];
}

/** A water of the venue, so that what was not visited can be said. */
export interface RoundWater {
  readonly id: string;
  readonly name: string;
  readonly pegs: readonly string[];
  readonly kit: readonly { readonly id: string; readonly name: string }[];
}

/** Whom to call now: a role and a number. */
export interface RoundContact {
  readonly role: string;
  readonly phone: string;
}

/** What the script needs of one water. Plain data: it goes into the page as JSON. */
export interface BankRoundData {
  readonly venue: { readonly id: string; readonly name: string };
  readonly guideDay: Day;
  readonly lengthUnit: 'm' | 'ft';
  readonly water: { readonly id: string; readonly name: string };
  /** In walking order. */
  readonly pegs: readonly RoundPeg[];
  readonly places: readonly RoundPlace[];
  readonly waters: readonly RoundWater[];
}

/** One stop of the round as the page lists it without script. */
export interface RoundStop extends PegMention {
  readonly where: string;
  /** The way there from the stop before, and what the guide says of the peg. */
  readonly facts: string;
}

export interface BankRoundPage {
  readonly waterName: string;
  /** Where the round begins and how long it is. */
  readonly wayWords: string;
  readonly stops: readonly RoundStop[];
  readonly places: readonly RoundPlace[];
  readonly emergencyNumber: string;
  readonly contacts: readonly RoundContact[];
  readonly nestingMonths: string;
  readonly data: BankRoundData;
  /** `data` as it may stand inside a script element. */
  readonly json: string;
}

/** The bank round page of one water. */
export function bankRoundPage(atlas: Atlas, waterId: string, bases: ReadonlyMap<PegKey, RecordBase>): BankRoundPage {
  const { settings } = atlas.venue;
  const water = { id: waterId, name: waterOf(atlas, waterId).name };
  const round = roundOfWater(atlas, waterId);
  const pegs = round.stops.map(({ peg }) => atlas.pegsByKey.get(pegKey(waterId, peg))!);
  const data: BankRoundData = {
    venue: venueOf(atlas),
    guideDay: settings.guideDay,
    lengthUnit: settings.units.length,
    water,
    pegs: pegs.map((peg) => roundPeg(peg, bases)),
    places: roundPlaces(atlas, waterId),
    waters: roundWaters(atlas),
  };
  return {
    waterName: water.name,
    wayWords: wayWords(round, settings.units),
    stops: pegs.map((peg, index) => roundStop(atlas, peg, round.stops[index]!.legMetres)),
    places: data.places,
    emergencyNumber: settings.emergency.number,
    contacts: contactsOf(atlas),
    nestingMonths: nestingMonthsOf(atlas),
    data,
    json: scriptJson(data),
  };
}

/** The page that lists the waters and the rounds on the phone. */
export interface RoundsPage {
  readonly venue: BankRoundData['venue'];
  readonly lengthUnit: 'm' | 'ft';
  readonly nestingMonths: string;
  readonly emergencyNumber: string;
  readonly contacts: readonly RoundContact[];
  /** `RoundWater`s as JSON, for the script. */
  readonly watersJson: string;
  readonly waters: readonly {
    readonly name: string;
    readonly words: string;
    readonly href: string;
    readonly sheetHref: string;
  }[];
}

/** The page that begins a bank round. */
export function roundsPage(atlas: Atlas): RoundsPage {
  const { settings, waters } = atlas.venue;
  return {
    venue: venueOf(atlas),
    lengthUnit: settings.units.length,
    nestingMonths: nestingMonthsOf(atlas),
    emergencyNumber: settings.emergency.number,
    contacts: contactsOf(atlas),
    watersJson: JSON.stringify(roundWaters(atlas)),
    waters: waters.map(({ id, name }) => {
      const { stops, lengthMetres } = roundOfWater(atlas, id);
      return {
        name,
        words: `${pegCount(stops.length)}, ${formatDistance(lengthMetres, settings.units)}`,
        href: siteLink(`bank-round/${id}/`),
        sheetHref: siteLink(`due/round-sheet/${id}/`),
      };
    }),
  };
}

function venueOf(atlas: Atlas): BankRoundData['venue'] {
  const { name, club } = atlas.venue.settings;
  return { id: venueId(name, club), name };
}

function wayWords({ from, stops, lengthMetres, isProven }: PegRound, units: Units): string {
  const length = formatDistance(lengthMetres, units);
  const start = from === null ? 'No car park is drawn: the way begins at the first peg' : `From ${from.name} and back`;
  const proof = isProven ? 'the shortest there is' : 'the shortest that was found';
  return `${pegCount(stops.length)}. ${start}, ${length} on foot, ${proof}.`;
}

function pegCount(pegs: number): string {
  return pegs === 1 ? '1 peg' : `${pegs} pegs`;
}

function roundStop(atlas: Atlas, peg: Peg, legMetres: number): RoundStop {
  const hazards = hazardsOf(peg).length;
  const facts = [
    `${formatDistance(legMetres, atlas.venue.settings.units)} on`,
    ...(hazards > 0 ? [hazards === 1 ? '1 hazard known' : `${hazards} hazards known`] : []),
  ];
  return {
    ...pegMention(atlas, peg),
    where: peg.where ?? '',
    facts: facts.join(' · '),
  };
}

function roundPeg(peg: Peg, bases: ReadonlyMap<PegKey, RecordBase>): RoundPeg {
  const base = bases.get(pegKey(peg.water, peg.peg)) ?? { record: '', known: {} };
  return { peg: peg.peg, ...base, hazards: hazardsOf(peg) };
}

function roundWaters({ venue }: Atlas): readonly RoundWater[] {
  return venue.waters.map(({ id, name, map }) => ({
    id,
    name,
    pegs: venue.pegs.filter(({ water }) => water === id).map(({ peg }) => peg),
    kit: map.places.filter(isRescueKit).map((place) => ({ id: place.id, name: rescueKitWords(place) })),
  }));
}

function contactsOf({ venue }: Atlas): readonly RoundContact[] {
  return venue.settings.contacts.flatMap(({ role, phone }) => (phone === undefined ? [] : [{ role, phone }]));
}

function hazardsOf(peg: Peg): RoundHazard[] {
  return peg.hazards.filter(isCurrent).map(roundHazard);
}

/** The club's nesting months in words: `March to August`. */
function nestingMonthsOf(atlas: Atlas): string {
  const months = atlas.venue.settings.nestingMonths;
  return months.length === 0 ? 'The nesting months' : monthSpan(months);
}
