import { expect, test } from 'vitest';
import { HoursDataSchema, hoursData, hoursDataSchema } from '../../src/atlas/hours-data.ts';
import { exampleVenue } from '../domain/example-venue.ts';

const [first] = exampleVenue().waters;
const day = (index: number) => `2026-01-0${index + 1}`;
const venue = exampleVenue({
  events: [0, 1, 2, 3].map((index) => ({
    id: `m${index}`,
    day: day(index),
    water: first!.id,
    kind: 'match',
    hours: 2,
    listing: 'full',
    framePlaces: 3,
    conditions: {},
  })),
  hours: [0, 1, 2, 3].flatMap((index) =>
    [1, 2].map((hour) => ({
      event: `m${index}`,
      peg: '1',
      hour,
      part: 'total',
      weightGrams: hour * (index + 1) * 100,
    })),
  ),
});

test('gives the shares of a month by hour with their intervals, and is what its schema says', () => {
  const data = hoursData(venue);
  expect(HoursDataSchema.parse(data)).toEqual(data);
  const { months } = data.waters.find(({ water }) => water === first!.id)!;
  expect(months.map(({ month }) => month)).toEqual([1, 2, 12]);
  // An hour of one part and one of two: a third and two thirds in each match, so that no match drawn anew says otherwise.
  expect(months[0]).toEqual({
    month: 1,
    bags: 4,
    matches: 4,
    match_hours: 2,
    thin: true,
    hours: [
      { hour: 1, share: 0.3333, low80: 0.3333, high80: 0.3333 },
      { hour: 2, share: 0.6667, low80: 0.6667, high80: 0.6667 },
    ],
  });
});

test('holds no peg, no event and no angler, and its schema refuses one', () => {
  const data = hoursData(venue);
  expect(JSON.stringify(data)).not.toMatch(/peg|event|angler|m0/);
  const [water] = data.waters;
  expect(HoursDataSchema.safeParse({ ...data, waters: [{ ...water, angler: 'a-1' }] }).success).toBe(false);
  expect(hoursDataSchema()).toMatchObject({
    type: 'object',
    required: ['format', 'waters'],
    additionalProperties: false,
  });
});
