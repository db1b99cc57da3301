import { describe, expect, test } from 'vitest';
import { sessionsInModel } from '../../src/ratings/sessions-in-model.ts';
import { EXAMPLE_SETTINGS, exampleVenue } from '../domain/example-venue.ts';
import { exampleEvent, exampleSession } from './example-log.ts';

const weighed = (peg: string, kilograms: number, event = 'a') =>
  exampleSession(event, peg, 'weighed', kilograms * 1000);
const seen = (sessions: ReturnType<typeof sessionsInModel>) =>
  sessions.sessions.map(({ session, logKg, isCensored }) => [session.peg, logKg, isCensored]);

describe('sessionsInModel', () => {
  test('takes a weighed bag as observed and a blank that means nothing as below the least bag of the log', () => {
    const venue = exampleVenue({
      events: [exampleEvent('a', { blankMeans: 'nothing' })],
      sessions: [weighed('1', 2), exampleSession('a', '2', 'blank')],
    });
    expect(seen(sessionsInModel(venue, 'total'))).toEqual([
      ['1', Math.log(2), false],
      ['2', Math.log(2), true],
    ]);
  });

  test('takes a blank as a DNW unless the club says otherwise', () => {
    const sessionsOf = (status: 'blank' | 'dnw') =>
      sessionsInModel(
        exampleVenue({
          events: [exampleEvent('a')],
          sessions: [weighed('1', 2), weighed('3', 4), exampleSession('a', '2', status)],
        }),
        'total',
      );
    expect(seen(sessionsOf('blank'))).toEqual(seen(sessionsOf('dnw')));
  });

  test('takes a DNW as below the lower quarter of the event’s weighed bags, never as a zero', () => {
    const venue = exampleVenue({
      events: [exampleEvent('a')],
      sessions: [...[1, 2, 3, 4, 5].map((kg) => weighed(String(kg), kg)), exampleSession('a', '6', 'dnw')],
    });
    expect(seen(sessionsInModel(venue, 'total')).at(-1)).toEqual(['6', Math.log(2), true]);
  });

  test('takes a DNW where only the places are listed as below the lowest of them, also where a mechanism was learned', () => {
    const venue = exampleVenue({
      events: [exampleEvent('a', { listing: 'frame', fished: 4 })],
      sessions: [weighed('1', 9), weighed('2', 8), weighed('3', 7), exampleSession('a', '4', 'dnw')],
    });
    for (const choice of [{}, { dnw: { shift: 0.2, blur: 0.3 } }]) {
      expect(seen(sessionsInModel(venue, 'total', choice)).at(-1)).toEqual(['4', Math.log(7), true]);
    }
  });

  test('takes an unlisted session as below the lowest listed bag', () => {
    const venue = exampleVenue({
      events: [exampleEvent('a', { listing: 'frame', fished: 3 })],
      sessions: [weighed('1', 9), weighed('2', 7), exampleSession('a', '3', 'unlisted')],
    });
    expect(seen(sessionsInModel(venue, 'total')).at(-1)).toEqual(['3', Math.log(7), true]);
  });

  test('bounds an unlisted session by the list of the whole match, on a water where nobody framed too', () => {
    const venue = exampleVenue({
      events: [
        exampleEvent('a', { listing: 'frame', fished: 2, match: 'open' }),
        exampleEvent('b', { listing: 'frame', fished: 1, match: 'open', water: 'lake' }),
      ],
      sessions: [weighed('1', 9), weighed('2', 7), exampleSession('b', '3', 'unlisted', undefined, { water: 'lake' })],
    });
    expect(seen(sessionsInModel(venue, 'total')).at(-1)).toEqual(['3', Math.log(7), true]);
  });

  test('leaves rows from before a part was weighed apart out of that part, and counts them', () => {
    const part = { parts: { carp: { weightGrams: 500 }, silvers: { weightGrams: 500 } } };
    const venue = exampleVenue({
      settings: {
        ...EXAMPLE_SETTINGS,
        bagParts: EXAMPLE_SETTINGS.bagParts.map((each) =>
          each.id === 'carp' ? { ...each, since: '2026-06-15' } : each,
        ),
      },
      events: [exampleEvent('a'), exampleEvent('b', { day: '2026-06-15' })],
      sessions: ['a', 'b'].map((event) => exampleSession(event, '1', 'weighed', 1000, part)),
    });
    expect(sessionsInModel(venue, 'carp')).toMatchObject({
      sessions: [{ event: { id: 'b' } }],
      leftOut: [{ why: 'part-unknown', sessions: 1 }],
    });
    expect(sessionsInModel(venue, 'silvers').sessions).toHaveLength(2);
    expect(sessionsInModel(venue, 'total').sessions).toHaveLength(2);
  });

  test('leaves out an event that lists its places only and whose draw is not known', () => {
    const venue = exampleVenue({
      events: [exampleEvent('a', { listing: 'frame', fished: 20 })],
      sessions: [weighed('1', 9), weighed('2', 7)],
    });
    const { sessions, leftOut } = sessionsInModel(venue, 'total');
    expect(sessions).toEqual([]);
    expect(leftOut).toEqual([{ why: 'draw-unknown', sessions: 2 }]);
  });

  test('keeps a frame-only event in which all who fished are listed', () => {
    const venue = exampleVenue({
      events: [exampleEvent('a', { listing: 'frame', fished: 2 })],
      sessions: [weighed('1', 9), weighed('2', 7)],
    });
    expect(sessionsInModel(venue, 'total').sessions).toHaveLength(2);
  });

  test('counts every session left out under its reason', () => {
    const venue = exampleVenue({
      events: [exampleEvent('a'), exampleEvent('b', { kind: 'practice' }), exampleEvent('c')],
      sessions: [
        weighed('1', 2),
        exampleSession('a', '2', 'absent'),
        exampleSession('a', '3', 'disqualified'),
        exampleSession('a', '4', 'unlisted'),
        weighed('1', 3, 'b'),
        weighed('2', 3, 'b'),
        exampleSession('c', '1', 'dnw'),
      ],
    });
    expect(sessionsInModel(venue, 'total').leftOut).toEqual([
      { why: 'chosen', sessions: 2 },
      { why: 'absent', sessions: 1 },
      { why: 'disqualified', sessions: 1 },
      { why: 'no-bound', sessions: 1 },
      { why: 'unlisted-in-full', sessions: 1 },
    ]);
  });

  test('takes chosen pegs where the venue says so', () => {
    const settings = { ...EXAMPLE_SETTINGS, ratingRules: { ...EXAMPLE_SETTINGS.ratingRules, countChosenPegs: true } };
    const venue = exampleVenue({
      settings,
      events: [exampleEvent('b', { kind: 'practice' })],
      sessions: [weighed('1', 3, 'b')],
    });
    expect(sessionsInModel(venue, 'total').sessions).toHaveLength(1);
  });

  test('takes a part that weighed nothing as below the least of it ever weighed, and leaves unknown parts out', () => {
    const part = (peg: string, carp?: number) =>
      exampleSession('a', peg, 'weighed', 4000, { parts: carp === undefined ? {} : { carp: { weightGrams: carp } } });
    const venue = exampleVenue({
      events: [exampleEvent('a')],
      sessions: [part('1', 3000), part('2', 0), part('3'), exampleSession('a', '4', 'dnw')],
    });
    const carp = sessionsInModel(venue, 'carp');
    expect(seen(carp)).toEqual([
      ['1', Math.log(3), false],
      ['2', Math.log(3), true],
      ['4', Math.log(4), true],
    ]);
    expect(carp.leftOut).toEqual([{ why: 'part-unknown', sessions: 1 }]);
  });

  test('gives the same sessions in the same order however the log is sorted', () => {
    const events = [exampleEvent('a'), exampleEvent('b', { day: '2026-05-01' })];
    const sessions = [weighed('1', 2), weighed('2', 3), weighed('1', 4, 'b'), exampleSession('b', '2', 'dnw')];
    const forward = sessionsInModel(exampleVenue({ events, sessions }), 'total');
    const backward = sessionsInModel(
      exampleVenue({ events: events.toReversed(), sessions: sessions.toReversed() }),
      'total',
    );
    expect(backward).toEqual(forward);
  });
});
