import { pegKey } from '../../domain/peg.ts';
import { groundOn } from '../../domain/stand.ts';
import type { PegGround, RatedVenue } from '../rated-venue.ts';
import type { ModelSession } from '../sessions-in-model.ts';
import { standsInLog } from '../stands-in-log.ts';

/** The ground a session was fished over; null where none is known. A peg that has moved to new ground since says nothing of what there was. */
export function groundOfSession(venue: RatedVenue): (session: ModelSession) => PegGround | null {
  const stands = standsInLog(venue);
  return ({ session, event }) => {
    const key = pegKey(session.water, session.peg);
    const ground = venue.ground?.[key];
    return ground !== undefined && groundOn(stands.get(key)!, event.day) === key ? ground : null;
  };
}
