import * as z from 'zod';
import { type FishingEvent, WATER_COLOURS } from '../../domain/session.ts';
import { cellText } from './cell-text.ts';
import { choice, day, matching, number, wholeNumber, word } from './fields.ts';
import { bearing, temperature, windSpeed } from './measures.ts';
import { named, recordOf, shapeOf } from './record-schema.ts';

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

/** What was noted of the day's weather and water. */
const conditionColumns = {
  air_temperature: named('airDegreesC', temperature().exactOptional()),
  water_temperature: named('waterDegreesC', temperature().exactOptional()),
  wind_from: named('windFromDegrees', bearing().exactOptional()),
  wind_speed: named('windMetresPerSecond', windSpeed().exactOptional()),
  water_colour: named('waterColour', choice(WATER_COLOURS).exactOptional()),
  sky: cellText('the sky: clear, overcast').exactOptional(),
};

/** Every other column of `events.csv`, in two lots: the conditions stand between them in a file. */
const eventColumns = {
  event: named('id', eventId()),
  date: named('day', day()),
  water: word('the water'),
  kind: choice(['match', 'pleasure', 'practice']),
  hours: number('hours fished', 0.5, 72),
  listing: choice(['full', 'frame']),
  frame_places: named('framePlaces', wholeNumber('how many places framed (0 where nothing was)', 0, 200)),
  fished: wholeNumber('how many fished', 0, 5000).exactOptional(),
};
const laterColumns = {
  match: eventId().exactOptional(),
  blank_means: named('blankMeans', blankMeaning().exactOptional()),
};

const eventOf = recordOf({ ...eventColumns, ...laterColumns });
const conditionsOf = recordOf(conditionColumns);

/** A row of `events.csv`. */
export const EventRowSchema = z
  .object(shapeOf({ ...eventColumns, ...conditionColumns, ...laterColumns }))
  .transform((row) => ({ ...eventOf(row), conditions: conditionsOf(row) })) satisfies z.ZodType<FishingEvent>;
