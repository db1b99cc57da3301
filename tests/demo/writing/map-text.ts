import type { Water } from '../../../src/domain/map.ts';
import type { LatLng, Ring } from '../../../src/domain/place.ts';
import { oneIn } from './quantities.ts';

type Properties = Record<string, string | number | boolean | undefined>;

/** A water's map as GeoJSON (RFC 7946): a feature a line, longitude first. */
export function mapText(water: Water): string {
  const map = water.map;
  const features = [
    feature(undefined, { kind: 'outline', name: water.name }, 'Polygon', [closed(map.outline)]),
    ...map.islands.map((island) =>
      feature(island.id, { kind: 'island', name: island.name }, 'Polygon', [closed(island.ring)]),
    ),
    ...map.overheadLines.map((line) =>
      feature(
        line.id,
        {
          kind: 'overhead-line',
          name: line.name,
          voltage_kv: line.voltageVolts === undefined ? undefined : line.voltageVolts / 1000,
          height_m: line.heightMetres,
          conductor_spread_m: line.conductorSpreadMetres,
        },
        'LineString',
        line.line.map(position),
      ),
    ),
    ...map.paths.map((path) =>
      feature(
        path.id,
        {
          kind: 'path',
          name: path.name,
          surface: path.surface,
          width_m: path.widthMetres,
          steps: path.steps,
          gradient: path.gradient === undefined ? undefined : oneIn(path.gradient),
          step_free: path.stepFree,
        },
        'LineString',
        path.line.map(position),
      ),
    ),
    ...map.places.map((place) =>
      feature(
        place.id,
        {
          kind: place.kind,
          name: place.name,
          vehicles: place.vehicles,
          ambulance: place.ambulance,
          locked: place.locked,
          opened_by: place.openedBy,
          hours: place.hours,
          note: place.note,
          checked_on: place.checkedOn,
        },
        'Point',
        position(place.at),
      ),
    ),
    ...map.areas.map((area) => feature(area.id, { kind: area.kind, name: area.name }, 'Polygon', [closed(area.ring)])),
  ];
  return `{"type":"FeatureCollection","features":[\n${features.map((line) => JSON.stringify(line)).join(',\n')}\n]}\n`;
}

function feature(id: string | undefined, properties: Properties, type: string, coordinates: unknown) {
  return { type: 'Feature', ...(id === undefined ? {} : { id }), properties, geometry: { type, coordinates } };
}

function position(at: LatLng): [number, number] {
  return [at.lng, at.lat];
}

/** Rings are drawn counter-clockwise; GeoJSON repeats the first position at the end. */
function closed(ring: Ring): [number, number][] {
  return [...ring, ring[0]!].map(position);
}
