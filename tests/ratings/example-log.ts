import type { FishingEvent, Session, SessionStatus } from '../../src/domain/session.ts';

/** A match on the example water; change what a test is about. */
export function exampleEvent(id: string, changes: Partial<FishingEvent> = {}): FishingEvent {
  return {
    id,
    day: '2026-06-14',
    water: 'pit',
    kind: 'match',
    hours: 5,
    listing: 'full',
    framePlaces: 2,
    conditions: {},
    ...changes,
  };
}

/** A session of the example water. */
export function exampleSession(
  event: string,
  peg: string,
  status: SessionStatus,
  weightGrams?: number,
  changes: Partial<Session> = {},
): Session {
  return {
    event,
    water: 'pit',
    peg,
    status,
    ...(weightGrams === undefined ? {} : { weightGrams }),
    parts: {},
    ...changes,
  };
}
