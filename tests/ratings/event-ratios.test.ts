import { expect, test } from 'vitest';
import { eventRatios } from '../../src/ratings/event-ratios.ts';
import { sessionsInModel } from '../../src/ratings/sessions-in-model.ts';
import { exampleVenue } from '../domain/example-venue.ts';
import { exampleEvent, exampleSession } from './example-log.ts';

test('a bag twice its event’s average has the log of two, whatever the day gave, and a DNW has no ratio', () => {
  const venue = exampleVenue({
    events: [exampleEvent('a'), exampleEvent('b', { day: '2026-06-20' })],
    sessions: [
      exampleSession('a', '1', 'weighed', 4000),
      exampleSession('a', '2', 'weighed', 1000),
      exampleSession('a', '3', 'dnw'),
      exampleSession('b', '1', 'weighed', 400),
      exampleSession('b', '2', 'weighed', 100),
    ],
  });
  const ratios = eventRatios(sessionsInModel(venue, 'total').sessions);
  expect(ratios.map(({ from }) => from.session.peg)).toEqual(['1', '2', '1', '2']);
  for (const [i, expected] of [2, 0.5, 2, 0.5].entries()) {
    expect(Math.exp(ratios[i]!.logRatio)).toBeCloseTo(expected, 12);
  }
});
