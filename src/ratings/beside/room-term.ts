import type { BesideMaker } from './beside-term.ts';
import { MAX_ROOM, roomInLog } from './room.ts';

/** The room beside a peg that day: an effect for each number of pegs left empty. */
export const roomTerm: BesideMaker = (venue, sessions) => {
  const roomOf = roomInLog(venue);
  if (new Set(sessions.map(roomOf)).size < 2) return { of: 'room', why: 'same-room' };
  const weightsOf = (room: number) => Array.from({ length: MAX_ROOM + 1 }, (_, k) => (k === room ? 1 : 0));
  return {
    of: 'room',
    term: {
      of: 'room',
      columns: MAX_ROOM + 1,
      weightsOf: (session) => weightsOf(roomOf(session)),
      curves: [
        {
          group: '',
          points: Array.from({ length: MAX_ROOM + 1 }, (_, at) => ({ at, weights: weightsOf(at) })),
          pointOf: roomOf,
        },
      ],
    },
  };
};
