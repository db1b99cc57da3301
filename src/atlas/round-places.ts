import { type Day, formatDay } from '../domain/day.ts';
import { type Hazard, isCurrent } from '../domain/hazard.ts';
import type { PlaceKind } from '../domain/map.ts';
import { isRescueKit, type KitKnown, kitKnown, rescueKitWords } from '../domain/rescue-kit.ts';
import { hazardKind } from '../domain/risk.ts';
import type { Atlas } from './atlas.ts';
import { waterOf } from './atlas.ts';

/** A current hazard, as the bailiff looks for it. */
export interface RoundHazard {
  readonly kind: string;
  readonly name: string;
  readonly place: string;
  readonly foundOn: Day;
  readonly severity: number;
  readonly likelihood: number;
  /** When it was last looked at, in words. */
  readonly lookedAt: string;
}

/** A place of the round that is no peg: a gate, a car park, a path, a piece of rescue kit; the whole water without an id. */
export interface RoundPlace {
  readonly id: string;
  readonly name: string;
  readonly isKit: boolean;
  readonly hazards: readonly RoundHazard[];
  /** What is known of it, in words. */
  readonly facts: string;
}

const WALKED: ReadonlySet<PlaceKind> = new Set(['gate', 'car-park', 'throw-line', 'aed', 'inlet', 'outlet', 'aerator']);

/** The places of a water that a round looks at: the water itself, rescue kit, gates and car parks, then the paths. */
export function roundPlaces(atlas: Atlas, waterId: string): readonly RoundPlace[] {
  const { venue } = atlas;
  const water = waterOf(atlas, waterId);
  const at = (mappedAs: string | undefined) =>
    (water.hazards ?? [])
      .filter((hazard) => hazard.mappedAs === mappedAs)
      .filter(isCurrent)
      .map(roundHazard);
  const places = water.map.places.filter(({ kind }) => WALKED.has(kind));
  return [
    { id: '', name: `${water.name}: the water itself`, isKit: false, hazards: at(undefined), facts: '' },
    ...[...places.filter(isRescueKit), ...places.filter((place) => !isRescueKit(place))].map((place) => ({
      id: place.id,
      name: isRescueKit(place) ? rescueKitWords(place) : place.name,
      isKit: isRescueKit(place),
      hazards: at(place.id),
      facts: isRescueKit(place) ? kitWords(kitKnown(place, water, venue.rounds)) : '',
    })),
    ...water.map.paths.map(({ id, name }) => ({
      id,
      name: name ?? `Path ${id}`,
      isKit: false,
      hazards: at(id),
      facts: '',
    })),
  ];
}

function kitWords({ checkedOn, state }: KitKnown): string {
  const when = checkedOn === null ? 'never checked' : `checked ${formatDay(checkedOn)}`;
  return state === 'missing' || state === 'damaged' ? `${state}, ${when}` : when;
}

/** A hazard as the bailiff looks for it. */
export function roundHazard({ kind, place, foundOn, checkedOn, severity, likelihood }: Hazard): RoundHazard {
  return {
    kind,
    name: hazardKind(kind).name,
    place,
    foundOn,
    severity,
    likelihood,
    lookedAt: checkedOn === undefined ? `found ${formatDay(foundOn)}` : `checked ${formatDay(checkedOn)}`,
  };
}
