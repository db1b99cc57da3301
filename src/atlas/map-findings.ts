import { isCurrent } from '../domain/hazard.ts';
import type { MapPath, Water } from '../domain/map.ts';
import type { LatLng } from '../domain/place.ts';
import { isRescueKit, kitKnown, kitTrouble, rescueKitWords } from '../domain/rescue-kit.ts';
import { hazardKind } from '../domain/risk.ts';
import type { Venue } from '../domain/venue.ts';
import { distanceMetres } from '../ground/geodesy/geodesic-between.ts';
import { mappedName } from './place-on-water.ts';

/** What is found at one place or path of a map, for a mark on it. */
export interface MapFinding {
  /** Id of the place or path. */
  readonly mappedAs: string;
  /** The place, or the middle of the path. */
  readonly at: LatLng;
  /** "Lane gate: Gate locked, a new chain; Blocked way, a fallen bough". */
  readonly words: string;
}

/**
 * What is found at no peg and stands on the map of a water: current hazards at its places and paths, and rescue kit known to
 * be missing or damaged. What is of the whole water, or at a place that is on no map, has no point: it is told in words.
 */
export function mapFindings({ rounds }: Pick<Venue, 'rounds'>, water: Water): readonly MapFinding[] {
  const current = (water.hazards ?? []).filter(isCurrent);
  const wordsAt = (id: string) =>
    current.filter(({ mappedAs }) => mappedAs === id).map(({ kind, place }) => `${hazardKind(kind).name}, ${place}`);
  const finding = (mappedAs: string, at: LatLng | null, name: string, found: readonly string[]): MapFinding[] =>
    at === null || found.length === 0 ? [] : [{ mappedAs, at, words: `${name}: ${found.join('; ')}` }];
  return [
    ...water.map.places.flatMap((place) => {
      const trouble = isRescueKit(place) ? kitTrouble(kitKnown(place, water, rounds).state) : null;
      const found = [...(trouble === null ? [] : [trouble]), ...wordsAt(place.id)];
      return finding(place.id, place.at, isRescueKit(place) ? rescueKitWords(place) : place.name, found);
    }),
    ...water.map.paths.flatMap((path) =>
      finding(path.id, middleOf(path), mappedName(water.map, path.id), wordsAt(path.id)),
    ),
  ];
}

/** Half-way along a path; null where it has no point. */
function middleOf({ line }: MapPath): LatLng | null {
  const lengths = line.slice(1).map((to, index) => distanceMetres(line[index]!, to));
  let left = lengths.reduce((sum, length) => sum + length, 0) / 2;
  for (const [index, length] of lengths.entries()) {
    if (left <= length && length > 0) return between(line[index]!, line[index + 1]!, left / length);
    left -= length;
  }
  return line[0] ?? null;
}

function between(a: LatLng, b: LatLng, share: number): LatLng {
  return { lat: a.lat + share * (b.lat - a.lat), lng: a.lng + share * (b.lng - a.lng) };
}
