import type { LatLng } from '../../domain/place.ts';
import type { WaterPlane } from '../../ground/water-plane.ts';
import type { Content, PlacedMap } from '../content.ts';
import type { Fault } from '../fault.ts';
import { faultAt } from '../sources/source.ts';
import { FAR_METRES, isSwapped, metresFromOutline, shownMetres } from './far-from-water.ts';
import type { WaterGrounds } from './water-grounds.ts';

/** What is drawn on a water's map lies near its outline. */
export function checkMapDistances({ waters }: Content, grounds: WaterGrounds): readonly Fault[] {
  return waters.flatMap(({ id, map }) => {
    const ground = grounds.get(id);
    return map === null || ground === undefined ? [] : farThings(map, ground);
  });
}

function farThings(map: PlacedMap, ground: WaterPlane): readonly Fault[] {
  const { overheadLines, paths, places, areas } = map.map;
  const drawn: readonly { readonly thing: object; readonly what: string; readonly points: readonly LatLng[] }[] = [
    ...overheadLines.map((line) => ({ thing: line, what: line.name, points: line.line })),
    ...paths.map((path) => ({ thing: path, what: path.name ?? 'a path', points: path.line })),
    ...places.map((place) => ({ thing: place, what: place.name, points: [place.at] })),
    ...areas.map((area) => ({ thing: area, what: area.name ?? area.kind, points: area.ring })),
  ];
  return drawn.flatMap(({ thing, what, points }) => {
    // A line may run on for miles: its nearest point counts.
    let least = Number.POSITIVE_INFINITY;
    for (const point of points) {
      least = Math.min(least, metresFromOutline(ground, point));
      if (least <= FAR_METRES) break;
    }
    if (least <= FAR_METRES) return [];
    const isTurned = points.every((point) => isSwapped(ground, point));
    const fault = faultAt(map.source, map.pathOf(thing), {
      rule: isTurned ? 'map-swapped' : 'map-far',
      found: `${what}, ${shownMetres(least)} from the water`,
      expected: `a place within ${shownMetres(FAR_METRES)} of the outline`,
      mend: isTurned
        ? 'Latitude and longitude are swapped: GeoJSON writes [longitude, latitude].'
        : 'Correct its coordinates, or move it to the map it belongs to.',
    });
    return [{ ...fault, field: 'coordinates' }];
  });
}
