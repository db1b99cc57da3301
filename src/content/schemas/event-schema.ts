import * as z from 'zod';
import type { FishingEvent } from '../../domain/session.ts';
import { cellText } from './cell-text.ts';
import { choice, day, matching, number, wholeNumber, word } from './fields.ts';
import { bearing, temperature, windSpeed } from './measures.ts';
import { withoutUndefined } from './without-undefined.ts';

/** The name of an event, used by its sessions. */
export const eventId = () =>
  matching(
    /^[A-Za-z0-9][A-Za-z0-9._-]{0,79}$/,
    'event-id',
    "the event's name: letters, digits and hyphens",
    'Write it without spaces, such as 2026-03-14-kiln-pool.',
  );

/** What a blank on a sheet stands for. */
export const blankMeaning = () => choice(['nothing', 'dnw']);

/** A row of `events.csv`. */
export const EventRowSchema = z
  .object({
    event: eventId(),
    date: day(),
    water: word('the water'),
    kind: choice(['match', 'pleasure', 'practice']),
    hours: number('hours fished', 0.5, 72),
    listing: choice(['full', 'frame']),
    frame_places: wholeNumber('how many places framed (0 where nothing was)', 0, 200),
    fished: wholeNumber('how many fished', 0, 5000).exactOptional(),
    air_temperature: temperature().exactOptional(),
    water_temperature: temperature().exactOptional(),
    wind_from: bearing().exactOptional(),
    wind_speed: windSpeed().exactOptional(),
    sky: cellText('the sky: clear, overcast').exactOptional(),
    match: eventId().exactOptional(),
    blank_means: blankMeaning().exactOptional(),
  })
  .transform((row) =>
    withoutUndefined({
      id: row.event,
      match: row.match,
      day: row.date,
      water: row.water,
      kind: row.kind,
      hours: row.hours,
      listing: row.listing,
      framePlaces: row.frame_places,
      fished: row.fished,
      blankMeans: row.blank_means,
      conditions: withoutUndefined({
        airDegreesC: row.air_temperature,
        waterDegreesC: row.water_temperature,
        windFromDegrees: row.wind_from,
        windMetresPerSecond: row.wind_speed,
        sky: row.sky,
      }),
    }),
  ) satisfies z.ZodType<FishingEvent>;
