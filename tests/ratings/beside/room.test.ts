import { describe, expect, test } from 'vitest';
import { MAX_ROOM, roomInLog } from '../../../src/ratings/beside/room.ts';
import { sessionsInModel } from '../../../src/ratings/sessions-in-model.ts';
import { examplePeg, exampleVenue } from '../../domain/example-venue.ts';
import { exampleEvent, exampleSession } from '../example-log.ts';

const pegs = Array.from({ length: 12 }, (_, i) => examplePeg(String(i + 1)));

function roomsOf(fished: readonly number[], absent: readonly number[] = []): Record<string, number> {
  const venue = exampleVenue({
    pegs,
    events: [exampleEvent('a')],
    sessions: [
      ...fished.map((peg) => exampleSession('a', String(peg), 'weighed', 1000)),
      ...absent.map((peg) => exampleSession('a', String(peg), 'absent')),
    ],
  });
  const { sessions } = sessionsInModel(venue, 'total');
  const rooms = sessions.map(roomInLog(venue));
  return Object.fromEntries(sessions.map(({ session }, i) => [session.peg, rooms[i]!]));
}

describe('roomInLog', () => {
  test('counts the pegs left empty on both sides, two a side at most, by number and not by letters', () => {
    // 4 has 5 beside it and two empty before; 9 has three empty before, of which two count, and 11 one peg on.
    expect(roomsOf([1, 4, 5, 9, 11])).toEqual({ 1: 4, 4: 2, 5: 2, 9: 3, 11: 3 });
  });

  test('takes the end of a bank as open, and who did not come as room', () => {
    expect(roomsOf([6])).toEqual({ 6: MAX_ROOM });
    expect(roomsOf([5, 7], [6])).toEqual({ 5: 3, 7: 3 });
  });
});
