import { isCurrent, type PlaceHazard } from '../domain/hazard.ts';
import type { Water } from '../domain/map.ts';
import type { Peg } from '../domain/peg.ts';
import type { Venue } from '../domain/venue.ts';
import type { PegSurvey } from '../ground/survey.ts';
import { mappedName, placeOnWater } from './place-on-water.ts';

/** A current hazard that is at no peg, and where it is for a reader: `Kiln Pool, Lane gate`. */
export interface PlaceFinding {
  readonly hazard: PlaceHazard;
  readonly where: string;
}

/** Every current hazard that is at no peg, of some waters. */
export function placeFindings(waters: readonly Water[]): readonly PlaceFinding[] {
  return waters.flatMap((water) =>
    current(water).map((hazard) => ({ hazard, where: placeOnWater(water, hazard.mappedAs) })),
  );
}

/**
 * What is found at a place of the map and concerns a peg: on the paths a way to it runs along, of whichever water, at the
 * gates, car parks and rescue kit its sheet names. Where its way is not known, every path of its water concerns it. What is
 * of its whole water stands among its own hazards.
 */
export function findingsForPeg({ waters }: Venue, peg: Peg, survey: PegSurvey): readonly PlaceFinding[] {
  const named = new Set<object>(
    [
      survey.nearestAed,
      survey.nearestThrowLine,
      survey.gates.best,
      survey.gates.atNight,
      survey.gates.lockedNearer,
    ].flatMap((near) => (near === null ? [] : [near.place])),
  );
  const parks = new Set(survey.walks.map(({ from }) => from));
  return waters.flatMap((water) => {
    const isOwn = water.id === peg.water;
    return current(water)
      .filter(({ kind, mappedAs }) => {
        if (mappedAs === undefined) return false;
        if (!isOnMap(water, mappedAs)) return isOwn;
        if (water.map.paths.some(({ id }) => id === mappedAs)) {
          return survey.wayPaths === null ? isOwn : survey.wayPaths.includes(`${water.id}/${mappedAs}`);
        }
        const place = water.map.places.find(({ id }) => id === mappedAs);
        // A missing throw line is named on no sheet any more, and is news to everybody on its water.
        if (place === undefined || kind === 'missing-kit') return isOwn;
        return (
          named.has(place) ||
          (place.kind === 'car-park' && parks.has(place.name)) ||
          (isOwn && !isSheltered(place.kind))
        );
      })
      .map((hazard) => ({
        hazard,
        where: mappedName(water.map, hazard.mappedAs ?? ''),
      }));
  });
}

/** Places that concern those alone whose sheet names them. */
function isSheltered(kind: string): boolean {
  return kind === 'gate' || kind === 'car-park' || kind === 'throw-line' || kind === 'aed';
}

function current({ hazards = [] }: Water): readonly PlaceHazard[] {
  return hazards.filter(isCurrent);
}

function isOnMap({ map }: Water, mappedAs: string | undefined): boolean {
  return mappedAs !== undefined && [...map.places, ...map.paths].some(({ id }) => id === mappedAs);
}
