import { USUAL_ROUND_COLUMNS } from '../../../src/content/schemas/round-schema.ts';
import type { BagPart } from '../../../src/domain/bag.ts';
import { CLEARANCE_MEASURES } from '../../../src/domain/clearance-measures.ts';
import type { Day } from '../../../src/domain/day.ts';
import type { HourWeight } from '../../../src/domain/hour-weight.ts';
import type { BankRound } from '../../../src/domain/round.ts';
import type { FishingEvent, Session } from '../../../src/domain/session.ts';
import type { GaugeReading, Sounding } from '../../../src/domain/venue.ts';
import { type Cell, csvText } from './csv-text.ts';
import { compassPoint, metres, poundsAndOunces } from './quantities.ts';

/** The number on the post of a stand on a day. */
export type NumberOn = (water: string, peg: string, day: Day) => string;

/** `sessions/<year>/events.csv`. */
export function eventsText(events: readonly FishingEvent[]): string {
  return csvText(
    [
      'event',
      'date',
      'water',
      'kind',
      'hours',
      'listing',
      'frame_places',
      'fished',
      'air_temperature',
      'water_temperature',
      'wind_from',
      'wind_speed',
      'sky',
    ],
    events.map((event) => [
      event.id,
      event.day,
      event.water,
      event.kind,
      event.hours,
      event.listing,
      event.framePlaces,
      event.fished,
      event.conditions.airDegreesC,
      event.conditions.waterDegreesC,
      compassPoint(event.conditions.windFromDegrees),
      event.conditions.windMetresPerSecond,
      event.conditions.sky,
    ]),
  );
}

/** `sessions/<year>/hours.csv`. */
export function hoursText(hours: readonly HourWeight[]): string {
  return csvText(
    ['event', 'peg', 'hour', 'part', 'weight'],
    hours.map(({ event, peg, hour, part, weightGrams }) => [event, peg, hour, part, poundsAndOunces(weightGrams)]),
  );
}

/** `sessions/<year>/sessions.csv`. */
export function sessionsText(sessions: readonly Session[], parts: readonly BagPart[]): string {
  return csvText(
    [
      'event',
      'section',
      'peg',
      'angler',
      'status',
      'weight',
      ...parts.flatMap((part) => [`${part.id}_weight`, `${part.id}_count`]),
      'spot',
      'method',
      'bait',
      'lines',
    ],
    sessions.map((session) => [
      session.event,
      session.section,
      session.painted ?? session.peg,
      session.angler,
      session.status,
      weight(session.weightGrams),
      ...parts.flatMap((part): Cell[] => [weight(session.parts[part.id]?.weightGrams), session.parts[part.id]?.count]),
      session.spot,
      session.method,
      session.bait,
      session.linesFed,
    ]),
  );
}

/** `soundings/<water>.csv`. */
export function soundingsText(soundings: readonly Sounding[], numberOn: NumberOn): string {
  return csvText(
    ['lat', 'lng', 'peg', 'distance', 'bearing', 'depth', 'date', 'level'],
    soundings.map((row) => [
      row.at?.lat,
      row.at?.lng,
      row.fromPeg === undefined ? undefined : numberOn(row.water, row.fromPeg.peg, row.day),
      row.fromPeg?.distanceMetres,
      row.fromPeg?.bearingDegrees,
      row.depthMetres,
      row.day,
      row.levelMetres,
    ]),
  );
}

/** `gauge/<water>.csv`. */
export function gaugeText(readings: readonly GaugeReading[]): string {
  return csvText(
    ['date', 'level', 'water_temperature'],
    readings.map((row) => [row.day, row.levelMetres, row.waterDegreesC]),
  );
}

/** `rounds/<date>-<ref>.csv`. */
export function roundText(round: BankRound, numberOn: NumberOn): string {
  return csvText(
    USUAL_ROUND_COLUMNS,
    round.entries.map((row) => [
      row.entry,
      row.water,
      row.peg === undefined ? undefined : numberOn(row.water, row.peg, row.day ?? round.day),
      row.status,
      row.platform,
      row.hazard,
      row.place,
      row.action,
      row.severity,
      row.likelihood,
      ...CLEARANCE_MEASURES.filter(({ isInEveryRound }) => isInEveryRound).map(({ field }) => metres(row[field])),
      metres(row.lineDistanceMetres),
      metres(row.levelMetres),
      row.waterDegreesC,
      row.at?.lat,
      row.at?.lng,
      row.note,
    ]),
  );
}

function weight(grams: number | undefined): Cell {
  if (grams === undefined) return undefined;
  return grams === 0 ? '0' : poundsAndOunces(grams);
}
