import { monthOf, yearOf } from '../../../src/domain/day.ts';
import type { Peg } from '../../../src/domain/peg.ts';
import type { FishingEvent, Session, SessionPart } from '../../../src/domain/session.ts';
import type { Chance } from '../chance.ts';
import { rounded } from '../ground/spot.ts';
import { type Angler, turnOut } from './anglers.ts';
import { GRAMS_PER_OUNCE, splitBag } from './bag-parts.ts';
import type { PlannedEvent } from './calendar.ts';
import { dnwChance } from './did-not-weigh.ts';
import { chooseTackle, type Tackle } from './tackle.ts';
import type { DayWeather } from './weather.ts';

/** How sheets of a log are filled in. */
export interface SheetHabits {
  readonly dnwShare: number;
  readonly unknownAnglerShare: number;
  readonly tackleShare: number;
  /** Share of events whose sheets weigh silvers and carp apart. */
  readonly partsShare: number;
  readonly absentShare: number;
  readonly disqualifiedShare: number;
}

/** What one event's bags are drawn from. */
export interface EventTruth {
  readonly mean: number;
  readonly event: number;
  readonly residualSd: number;
  /** Own effect and features' of a peg in the event's month. */
  readonly pegSum: (peg: Peg) => number;
}

interface Place {
  readonly peg: Peg;
  readonly angler: Angler;
  readonly luck: number;
  readonly ounces: number;
}

const OUNCES_PER_KILOGRAM = 1000 / GRAMS_PER_OUNCE;

/** Fishes one planned event: who drew what, what they weighed, and what the sheet kept of it. */
export function fishEvent(
  id: string,
  planned: PlannedEvent,
  pegs: readonly Peg[],
  anglers: readonly Angler[],
  truth: EventTruth,
  weather: DayWeather,
  habits: SheetHabits,
  chance: Chance,
): { readonly event: FishingEvent; readonly sessions: readonly Session[] } {
  const open = pegs.filter((peg) => peg.status === 'open' || planned.day < (peg.statusSince ?? ''));
  const field = Math.max(
    Math.min(3, open.length),
    Math.min(anglers.length, Math.round(open.length * planned.fieldShare)),
  );
  const drawn = drawPegs(open, field, planned, truth, chance);
  const present = turnOut(anglers, field, chance);
  const places = drawn.map((peg, i): Place => {
    const angler = present[i]!;
    const luck = chance.normal();
    const kilograms = Math.exp(truth.mean + truth.event + angler.effect + truth.pegSum(peg) + truth.residualSd * luck);
    return { peg, angler, luck, ounces: Math.round(kilograms * OUNCES_PER_KILOGRAM) };
  });
  const framePlaces = planned.kind === 'match' ? Math.max(3, Math.round(field / 5)) : 0;
  const sheet = {
    sections: planned.kind === 'match' && chance.happens(0.8),
    parts: chance.happens(habits.partsShare),
    counts: chance.happens(0.6),
    tackle: planned.listing === 'full' && chance.happens(0.75),
    year: yearOf(planned.day),
    waterDegreesC: weather.waterDegreesC,
  };
  const statuses = statusesOf(places, habits, planned, chance);
  const listed = listedPlaces(places, statuses, framePlaces);
  const sessions = places.flatMap((place, i): Session[] => {
    const status = statuses[i]!;
    const shared = {
      event: id,
      water: planned.water,
      peg: place.peg.peg,
      ...(sheet.sections ? { section: sectionOf(place.peg, drawn) } : {}),
      ...(chance.happens(habits.unknownAnglerShare) ? {} : { angler: place.angler.ref }),
    };
    if (planned.listing === 'frame' && !listed.has(i)) {
      if (!planned.drawKnown) return [];
      const isListedApart = status === 'absent' || status === 'disqualified';
      return [{ ...shared, status: isListedApart ? status : 'unlisted', parts: {} }];
    }
    if (status !== 'weighed') return [{ ...shared, status, parts: {} }];
    return [
      {
        ...shared,
        status,
        weightGrams: place.ounces * GRAMS_PER_OUNCE,
        ...weighedDetail(place, sheet, habits, chance),
      },
    ];
  });
  return { event: eventOf(id, planned, field, framePlaces, weather, chance), sessions };
}

function weighedDetail(
  place: Place,
  sheet: {
    readonly parts: boolean;
    readonly counts: boolean;
    readonly tackle: boolean;
    readonly year: number;
    readonly waterDegreesC: number;
  },
  habits: SheetHabits,
  chance: Chance,
): { readonly parts: Readonly<Record<string, SessionPart>> } & Tackle {
  const parts = sheet.parts
    ? splitBag(
        place.ounces,
        { waterDegreesC: sheet.waterDegreesC, year: sheet.year, countsLogged: sheet.counts },
        chance,
      )
    : {};
  const isTold = sheet.tackle && chance.happens(habits.tackleShare);
  const day = { waterDegreesC: sheet.waterDegreesC, features: place.peg.features, luck: place.luck };
  return { parts, ...(isTold ? chooseTackle(day, chance) : {}) };
}

/** Pegs in the order of their numbers: drawn by lot in a match, chosen for what they are otherwise. */
function drawPegs(
  open: readonly Peg[],
  field: number,
  planned: PlannedEvent,
  truth: EventTruth,
  chance: Chance,
): readonly Peg[] {
  const key = (peg: Peg) =>
    planned.kind === 'match' ? chance.uniform() : Math.log(chance.uniform()) / Math.exp(1.5 * truth.pegSum(peg));
  const chosen = new Set(
    open
      .map((peg) => ({ peg, key: key(peg) }))
      .sort((a, b) => b.key - a.key)
      .slice(0, field)
      .map(({ peg }) => peg),
  );
  return open.filter((peg) => chosen.has(peg));
}

function statusesOf(
  places: readonly Place[],
  habits: SheetHabits,
  planned: PlannedEvent,
  chance: Chance,
): Session['status'][] {
  const order = places.map((_, i) => i).sort((a, b) => places[a]!.ounces - places[b]!.ounces);
  const shareBelow = new Map(order.map((index, rank) => [index, (rank + 0.5) / places.length]));
  return places.map((place, i) => {
    const turn = chance.uniform();
    if (planned.kind === 'match' && turn < habits.absentShare) return 'absent';
    if (planned.kind === 'match' && turn > 1 - habits.disqualifiedShare) return 'disqualified';
    if (place.ounces === 0) return 'blank';
    return chance.happens(dnwChance(shareBelow.get(i)!, habits.dnwShare)) ? 'dnw' : 'weighed';
  });
}

/** The places a frame-only listing publishes: the heaviest that weighed. */
function listedPlaces(places: readonly Place[], statuses: readonly Session['status'][], count: number): Set<number> {
  return new Set(
    places
      .map((_, i) => i)
      .filter((i) => statuses[i] === 'weighed')
      .sort((a, b) => places[b]!.ounces - places[a]!.ounces)
      .slice(0, count),
  );
}

/** Sections of about ten pegs that stand together. */
function sectionOf(peg: Peg, drawn: readonly Peg[]): string {
  const sections = Math.max(1, Math.round(drawn.length / 10));
  return String.fromCharCode(65 + Math.floor((drawn.indexOf(peg) * sections) / drawn.length));
}

function eventOf(
  id: string,
  planned: PlannedEvent,
  fished: number,
  framePlaces: number,
  weather: DayWeather,
  chance: Chance,
): FishingEvent {
  const hasWind = chance.happens(0.8);
  return {
    id,
    day: planned.day,
    water: planned.water,
    kind: planned.kind,
    hours:
      planned.kind === 'match'
        ? monthOf(planned.day) >= 11 || monthOf(planned.day) <= 2
          ? 4.5
          : 5
        : chance.whole(5, 8),
    listing: planned.listing,
    framePlaces,
    ...(planned.kind === 'match' ? { fished } : {}),
    conditions: {
      ...(chance.happens(0.75) ? { airDegreesC: weather.airDegreesC } : {}),
      ...(chance.happens(0.88) ? { waterDegreesC: rounded(weather.waterDegreesC + 0.3 * chance.normal(), 1) } : {}),
      ...(hasWind
        ? {
            windFromDegrees: weather.windFromDegrees,
            windMetresPerSecond: weather.windMetresPerSecond,
            sky: weather.sky,
          }
        : {}),
    },
  };
}
