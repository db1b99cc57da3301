import type { Water, WaterMap } from '../../../src/domain/map.ts';
import type { LatLng } from '../../../src/domain/place.ts';
import type { DrawnWater } from './drawn-water.ts';
import type { Spot } from './spot.ts';

/** Turns a drawing into a water of the venue, spots into positions. */
export function waterOf(drawn: DrawnWater, place: (spot: Spot) => LatLng): Water {
  return {
    id: drawn.id,
    name: drawn.name,
    kind: drawn.kind,
    datum: drawn.datum,
    closeSeason: drawn.closeSeason,
    access: drawn.access,
    notesMarkdown: drawn.notesMarkdown,
    map: mapOf(drawn, place),
  };
}

function mapOf(drawn: DrawnWater, place: (spot: Spot) => LatLng): WaterMap {
  return {
    outline: drawn.outline.map(place),
    islands: drawn.islands.map((island) => ({ ...island, ring: island.ring.map(place) })),
    overheadLines: drawn.overheadLines.map((line) => ({ ...line, line: line.line.map(place) })),
    paths: drawn.paths.map((path) => ({ ...path, line: path.line.map(place) })),
    places: drawn.places.map((thing) => ({ ...thing, at: place(thing.at) })),
    areas: drawn.areas.map((area) => ({ ...area, ring: area.ring.map(place) })),
  };
}
