import { addDays, type Day } from '../domain/day.ts';
import type { RatedVenue } from './rated-venue.ts';
import { sessionsInModel } from './sessions-in-model.ts';

/** The venue as it was known on a day: its log up to then. */
export function venueBefore<Known extends RatedVenue>(venue: Known, last: Day): Known {
  const events = venue.events.filter(({ day }) => day <= last);
  const ids = new Set(events.map(({ id }) => id));
  return { ...venue, events, sessions: venue.sessions.filter(({ event }) => ids.has(event)) };
}

/** Of a log whose last month is a larger share, that month has something to teach. */
const SMALL_SHARE = 0.1;

/**
 * The log before its last month, where that month is less than a tenth of it: what is learned from there is as good, and a match more
 * leaves it as it was. Else the whole log.
 */
export function settledLog(venue: RatedVenue): RatedVenue {
  const { sessions } = sessionsInModel(venue, 'total');
  const last = sessions.at(-1)?.event.day;
  if (last === undefined) return venue;
  const until = addDays(`${last.slice(0, 7)}-01`, -1);
  const rest = sessions.filter(({ event }) => event.day <= until);
  const countDnw = (of: typeof sessions) => of.filter(({ isDnw }) => isDnw === true).length;
  const isMost = (part: number, whole: number) => part >= (1 - SMALL_SHARE) * whole;
  const isSettled = isMost(rest.length, sessions.length) && isMost(countDnw(rest), countDnw(sessions));
  return isSettled ? venueBefore(venue, until) : venue;
}
