import type { Units } from '../domain/bag.ts';
import type { Peg } from '../domain/peg.ts';
import { compassWords, formatDistance, formatPosition } from '../domain/place-words.ts';
import type { NearbyPlace, PegSurvey } from '../ground/survey.ts';

/** What a caller reads out, and where help hangs. */
export interface PegEmergency {
  readonly where: string;
  /** Null outside Great Britain. */
  readonly gridReference: string | null;
  readonly position: string;
  readonly help: readonly { readonly what: string; readonly words: string }[];
}

/** The emergency block of a peg. What is not mapped reads "not known". */
export function pegEmergency(peg: Peg, waterName: string, survey: PegSurvey, units: Units): PegEmergency {
  return {
    where: `${waterName}, peg ${peg.peg}`,
    gridReference: survey.gridReference,
    position: formatPosition(peg.at),
    help: [
      { what: 'Gate for an ambulance', words: placeWords(survey.nearestGate, units) },
      { what: 'Defibrillator (AED)', words: placeWords(survey.nearestAed, units) },
      { what: 'Throw line', words: placeWords(survey.nearestThrowLine, units) },
    ],
  };
}

/** "Brick Lane gate, 140 m north-east (walk 182 m)". */
function placeWords(place: NearbyPlace | null, units: Units): string {
  if (place === null) return 'not known';
  const straight = `${formatDistance(place.distanceMetres, units)} ${compassWords(place.bearingDegrees)}`;
  const walk = place.walkMetres === null ? '' : ` (walk ${formatDistance(place.walkMetres, units)})`;
  return `${place.name}, ${straight}${walk}`;
}
