import type { Feature, FeatureCollection, Geometry, Position } from 'geojson';
import type { MapPath, MapPlace, Water } from '../domain/map.ts';
import { pegKey } from '../domain/peg.ts';
import { decidingFacts } from '../domain/peg-facts.ts';
import { pegVerdict } from '../domain/peg-verdict.ts';
import { geojsonPosition, type LatLng, type Ring } from '../domain/place.ts';
import { isAnticlockwise } from '../domain/ring.ts';
import { closedBecause, pegLabel } from '../domain/verdict-words.ts';
import { standOffZone, standOffZoneMetres } from '../ground/stand-off-zone.ts';
import { type Atlas, surveyOfPeg, surveyOfWater, waterOf } from './atlas.ts';
import { FINDING } from './drawing/place-mark.ts';
import { isobathWords } from './isobath-words.ts';
import { mapFindings } from './map-findings.ts';
import { factsOfPeg } from './peg-verdicts.ts';
import { pegLink } from './site-link.ts';

/**
 * The whole venue as GeoJSON (RFC 7946: WGS 84, longitude first, outer rings anticlockwise). Every feature has a `kind`
 * and its `water`: outline (islands are its holes), island, peg, overhead-line, stand-off-zone, isobath, path, the kinds
 * of places and areas, and finding: a current hazard at a place or path, or rescue kit that is missing.
 */
export function venueGeojson(atlas: Atlas): FeatureCollection {
  return collection(atlas.venue.waters.flatMap(({ id }) => waterFeatures(atlas, id)));
}

/**
 * The same of one water, for its own map; overhead lines of the other waters are on it too, for they know no water, and what
 * is found at their gates and paths, with those themselves: a way to a peg may begin there.
 */
export function waterGeojson(atlas: Atlas, water: string): FeatureCollection {
  const others = atlas.venue.waters.filter(({ id }) => id !== water);
  return collection([
    ...waterFeatures(atlas, water),
    ...others.flatMap((other) => [
      ...wayFeatures(other),
      ...lineFeatures(atlas, other),
      ...findingFeatures(atlas, other),
    ]),
  ]);
}

function collection(features: readonly Feature[]): FeatureCollection {
  return { type: 'FeatureCollection', features: [...features] };
}

function waterFeatures(atlas: Atlas, id: string): readonly Feature[] {
  const water = waterOf(atlas, id);
  return [
    ...groundFeatures(water),
    ...findingFeatures(atlas, water),
    ...isobathFeatures(atlas, id),
    ...lineFeatures(atlas, water),
    ...pegFeatures(atlas, id),
  ];
}

function groundFeatures({ id, name, map }: Water): readonly Feature[] {
  const islands = map.islands.map(({ ring }) => ring);
  return [
    feature({ kind: 'outline', water: id, name }, polygon(map.outline, islands)),
    ...map.islands.map((island) =>
      feature({ kind: 'island', water: id, name: island.name ?? null }, polygon(island.ring, [])),
    ),
    ...map.areas.map(({ kind, name: area, ring }) =>
      feature({ kind, water: id, name: area ?? null }, polygon(ring, [])),
    ),
    ...map.paths.map((path) => pathFeature(id, path)),
    ...map.places.map((place) => placeFeature(id, place)),
  ];
}

/** A path with what a way along it is told to be like; `mappedAs` is its id on the club's own map. */
function pathFeature(water: string, { id, name, line, stepFree, steps, gradient, widthMetres }: MapPath): Feature {
  const known = { stepFree: stepFree ?? null, steps: steps ?? null, gradient: gradient ?? null };
  return feature(
    { kind: 'path', water, mappedAs: id, name: name ?? null, ...known, widthM: widthMetres ?? null },
    lineString(line),
  );
}

function placeFeature(water: string, { kind, name, at }: MapPlace): Feature {
  return feature({ kind, water, name }, { type: 'Point', coordinates: geojsonPosition(at) });
}

/** What a way from elsewhere in the venue runs along and begins at. */
function wayFeatures({ id, map }: Water): readonly Feature[] {
  const ends = map.places.filter(({ kind }) => kind === 'car-park' || kind === 'gate');
  return [...map.paths.map((path) => pathFeature(id, path)), ...ends.map((place) => placeFeature(id, place))];
}

/** What is found at places and paths; `mappedAs` is the id they have on the club's own map. */
function findingFeatures({ venue }: Atlas, water: Water): readonly Feature[] {
  return mapFindings(venue, water).map(({ mappedAs, at, words }) =>
    feature(
      { kind: FINDING, water: water.id, mappedAs, name: words },
      { type: 'Point', coordinates: geojsonPosition(at) },
    ),
  );
}

function isobathFeatures(atlas: Atlas, id: string): readonly Feature[] {
  const { units } = atlas.venue.settings;
  return (surveyOfWater(atlas, id).depth?.isobaths ?? []).map(({ depthMetres, lines }) =>
    feature(
      { kind: 'isobath', water: id, depthM: depthMetres, name: isobathWords(depthMetres, units.length) },
      { type: 'MultiLineString', coordinates: lines.map((line) => line.map(geojsonPosition)) },
    ),
  );
}

function lineFeatures(atlas: Atlas, { id, map }: Water): readonly Feature[] {
  const rule = atlas.venue.settings.standOff;
  return map.overheadLines.flatMap((line) => [
    feature(
      { kind: 'overhead-line', water: id, name: line.name, voltageV: line.voltageVolts ?? null },
      lineString(line.line),
    ),
    feature(
      { kind: 'stand-off-zone', water: id, name: line.name, fromCentreM: standOffZoneMetres(line, rule) },
      {
        type: 'MultiPolygon',
        coordinates: standOffZone(line, rule).map(([outer = [], ...holes]) => polygon(outer, holes).coordinates),
      },
    ),
  ]);
}

function pegFeatures(atlas: Atlas, id: string): readonly Feature[] {
  return (atlas.pegsByWater.get(id) ?? []).map((peg) => {
    const facts = factsOfPeg(atlas, peg);
    const { guideDay } = atlas.venue.settings;
    const verdict = pegVerdict(facts, guideDay);
    const properties = {
      kind: 'peg',
      water: id,
      peg: peg.peg,
      status: verdict.state,
      asOf: guideDay,
      reason: verdict.state === 'closed' ? closedBecause(verdict) : null,
      until: verdict.state === 'closed' ? verdict.until : null,
      facts: decidingFacts(facts),
      name: pegLabel(peg.peg, verdict),
      facing: peg.facingDegrees,
      ...(peg.isFacingEstimated === true ? { facingEstimated: true } : {}),
      bankSteps: peg.bank?.steps ?? null,
      gridReference: surveyOfPeg(atlas, pegKey(id, peg.peg)).gridReference,
      sheet: pegLink(id, peg.peg),
    };
    return feature(properties, { type: 'Point', coordinates: geojsonPosition(peg.at) });
  });
}

function feature(properties: Record<string, unknown>, geometry: Geometry): Feature {
  return { type: 'Feature', properties, geometry };
}

function lineString(line: readonly LatLng[]): Geometry {
  return { type: 'LineString', coordinates: line.map(geojsonPosition) };
}

function polygon(outer: Ring, holes: readonly Ring[]): { type: 'Polygon'; coordinates: Position[][] } {
  return {
    type: 'Polygon',
    coordinates: [closedRing(outer, 'anticlockwise'), ...holes.map((hole) => closedRing(hole, 'clockwise'))],
  };
}

/** A linear ring: its first position repeated at the end, turning the way the standard asks for (section 3.1.6). */
function closedRing(ring: Ring, turn: 'clockwise' | 'anticlockwise'): Position[] {
  const positions = ring.map(geojsonPosition);
  const turned = isAnticlockwise(ring) === (turn === 'anticlockwise') ? positions : positions.toReversed();
  return [...turned, turned[0] ?? []];
}
