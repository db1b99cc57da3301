import { pegKey } from '../../domain/peg.ts';
import { groundOn } from '../../domain/stand.ts';
import type { GroundDepths, RatedVenue } from '../rated-venue.ts';
import type { ModelSession } from '../sessions-in-model.ts';
import { standsInLog } from '../stands-in-log.ts';

/** The depths a session was fished over; null where none is plumbed. A peg that has moved to new ground since says nothing of those there were. */
export function depthsOfSession(venue: RatedVenue): (session: ModelSession) => GroundDepths | null {
  const stands = standsInLog(venue);
  return ({ session, event }) => {
    const key = pegKey(session.water, session.peg);
    const depths = venue.ground?.[key]?.depths ?? null;
    return depths !== null && groundOn(stands.get(key)!, event.day) === key ? depths : null;
  };
}
