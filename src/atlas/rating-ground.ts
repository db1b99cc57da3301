import { type PegKey, pegKey } from '../domain/peg.ts';
import type { Venue } from '../domain/venue.ts';
import type { PegSurvey, Survey } from '../ground/survey.ts';
import type { PegGround, RatedVenue } from '../ratings/rated-venue.ts';

/**
 * A venue with what its survey says of each peg's ground, as the ratings ask for it: depths to the centimetre, and open water to
 * the metre where some match logs its wind, so that nothing else that moves on a map makes them anew.
 */
export function withGround(venue: Venue, survey: Survey): Venue & RatedVenue {
  const isWindLogged = venue.events.some(({ conditions }) => conditions.windFromDegrees !== undefined);
  const ground: Record<PegKey, PegGround> = {};
  for (const { water, peg } of venue.pegs) {
    const surveyed = survey.pegs[pegKey(water, peg)];
    if (surveyed === undefined) continue;
    ground[pegKey(water, peg)] = {
      ...(isWindLogged ? { fetchMetres: surveyed.wind.map(({ fetchMetres }) => Math.round(fetchMetres)) } : {}),
      depths: {
        atMarginMetres: depthOn(surveyed, 'margin'),
        at6Metres: depthOn(surveyed, 'pole-6'),
        at13Metres: depthOn(surveyed, 'pole-13'),
      },
    };
  }
  return { ...venue, ground };
}

function depthOn({ lineDepths }: PegSurvey, line: string): number | null {
  const depth = lineDepths.find(({ id }) => id === line)?.depthMetres ?? null;
  return depth === null ? null : Math.round(depth * 100) / 100;
}
