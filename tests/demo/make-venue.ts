import { addDays, type Day } from '../../src/domain/day.ts';
import type { Peg } from '../../src/domain/peg.ts';
import type { LatLng } from '../../src/domain/place.ts';
import type { Venue, VenueSettings } from '../../src/domain/venue.ts';
import { type BankCalendar, quarterlyCalendar } from './bank/bank-calendar.ts';
import { pegRecord } from './bank/peg-record.ts';
import { walkRounds } from './bank/rounds.ts';
import { type Chance, seededChance } from './chance.ts';
import { drawAnyWaters } from './ground/any-water.ts';
import type { DrawnWater } from './ground/drawn-water.ts';
import { type PegStand, standPegs } from './ground/peg-stands.ts';
import { type Plumbing, plumb } from './ground/soundings.ts';
import { placedAt, type Spot } from './ground/spot.ts';
import { waterOf } from './ground/water-map.ts';
import { readGauge } from './log/gauge.ts';
import { type LogOptions, makeLog } from './log/make-log.ts';
import type { Truth } from './log/truth.ts';
import { drawWeather } from './log/weather.ts';
import { demoSettings } from './settings.ts';

/** Size of a generated venue. */
export interface VenueOptions {
  readonly seed: number;
  readonly waters: number;
  readonly pegs: number;
  readonly anglers: number;
  readonly events: number;
  /** About how many sessions, spread evenly over the events; about three quarters of the pegs an event if left out. */
  readonly sessions?: number;
  /** About how many soundings in all. */
  readonly soundings: number;
  /** The first and last day of the log; the last is the guide's day. */
  readonly firstDay: Day;
  readonly lastDay: Day;
  readonly dnwShare: number;
  readonly frameOnlyShare: number;
}

const CHOSEN_SHARE = 0.08;

/** A generated venue, and what its log was drawn from. */
export interface GeneratedVenue {
  readonly venue: Venue;
  readonly truth: Truth;
}

/** A middling venue; every option can be set. */
export const USUAL_VENUE: VenueOptions = {
  seed: 1,
  waters: 3,
  pegs: 96,
  anglers: 160,
  events: 136,
  soundings: 1200,
  firstDay: '2023-11-25',
  lastDay: '2026-11-21',
  dnwShare: 0.09,
  frameOnlyShare: 0.1,
};

/** The origin of the drawings: a sandbank of the tidal Wash, where no such water can ever be and nobody can go to fish it. */
export const ORIGIN: LatLng = { lat: 52.9307, lng: 0.2227 };

/** Makes a venue of any size in memory, with the truth its log was drawn from. The same options give the same venue. */
export function makeVenue(options: Partial<VenueOptions> = {}): GeneratedVenue {
  const size = { ...USUAL_VENUE, ...options };
  const chance = seededChance(size.seed);
  const settings = demoSettings(size.lastDay);
  const place = placedAt(ORIGIN);
  const calendar = quarterlyCalendar(size.firstDay, size.lastDay);
  const drawn = drawAnyWaters(size.waters, size.pegs, addDays(size.lastDay, -7), chance.apart('waters'));
  const climates = Object.fromEntries(drawn.map((water) => [water.id, water.climate]));
  const weather = drawWeather(addDays(size.firstDay, -30), size.lastDay, climates, chance.apart('weather'));
  const ground = drawn.map((water) => groundOf(water, settings, place, calendar, chance.apart(water.id)));
  const { pegs, rounds } = walkRounds(
    ground.flatMap((water) => water.pegs),
    calendar,
    settings.nestingMonths,
    weather,
    chance.apart('rounds'),
  );
  const perWater = size.soundings / drawn.length;
  const soundings = ground.flatMap(({ water, stands }) =>
    plumb(
      water,
      stands,
      evenPlumbing(water, perWater, size.lastDay),
      weather,
      place,
      chance.apart(`plumb ${water.id}`),
    ),
  );
  const log = makeLog(
    pegs,
    logOptions(size, drawn, pegs.filter((peg) => peg.status === 'open').length),
    weather,
    chance.apart('log'),
  );
  return {
    venue: {
      settings,
      waters: drawn.map((water) => waterOf(water, place)),
      pegs,
      events: log.events,
      sessions: log.sessions,
      notices: [],
      rounds,
      soundings,
      gauge: drawn.flatMap((water) =>
        readGauge(water.id, size.firstDay, size.lastDay, weather, chance.apart(`gauge ${water.id}`)),
      ),
    },
    truth: log.truth,
  };
}

/** A drawn water with its pegs stood and recorded. */
export interface WaterGround {
  readonly water: DrawnWater;
  readonly stands: readonly PegStand[];
  readonly pegs: readonly Peg[];
}

/** Stands a water's pegs on its bank and writes their records. */
export function groundOf(
  water: DrawnWater,
  settings: VenueSettings,
  place: (spot: Spot) => LatLng,
  calendar: BankCalendar,
  chance: Chance,
): WaterGround {
  const stands = standPegs(water, settings.standOff, settings.permittedReach, chance.apart('stands'));
  const records = chance.apart('records');
  return {
    water,
    stands,
    pegs: stands.map((stand) => pegRecord(water, stand, place, calendar, records.apart(stand.peg))),
  };
}

function evenPlumbing(water: DrawnWater, soundings: number, lastDay: Day): Plumbing {
  const xs = water.outline.map((spot) => spot.x);
  const ys = water.outline.map((spot) => spot.y);
  const days = { west: addDays(lastDay, -20), east: addDays(lastDay, -19), pole: addDays(lastDay, -18) };
  // About seven tenths of the box round a water is water.
  const squareMetres = 0.7 * (Math.max(...xs) - Math.min(...xs)) * (Math.max(...ys) - Math.min(...ys));
  return { gridMetres: Math.sqrt(squareMetres / Math.max(1, soundings)), where: () => true, poleMetres: [], days };
}

function logOptions(size: VenueOptions, waters: readonly DrawnWater[], openPegs: number): LogOptions {
  const pegsAWater = openPegs / waters.length;
  // Chosen-peg events are smaller, and half of the frame-only ones keep a fifth of their rows.
  const rowsKept = (1 - 0.6 * CHOSEN_SHARE) * (1 - 0.4 * size.frameOnlyShare);
  const share = size.sessions === undefined ? 0.77 : size.sessions / size.events / pegsAWater / rowsKept;
  return {
    calendar: {
      firstDay: size.firstDay,
      lastDay: size.lastDay,
      events: size.events,
      waters: waters.map((water) => water.id),
      chosenShare: CHOSEN_SHARE,
      frameOnlyShare: size.frameOnlyShare,
      fieldShare: [Math.min(0.9, share * 0.9), Math.min(1, share * 1.1)],
    },
    anglers: size.anglers,
    spread: { event: 0.35, angler: 0.35, peg: 0.14, residual: 0.6 },
    habits: {
      dnwShare: size.dnwShare,
      unknownAnglerShare: 0.04,
      tackleShare: 0.5,
      partsShare: 0.85,
      absentShare: 0.008,
      disqualifiedShare: 0.003,
    },
  };
}
