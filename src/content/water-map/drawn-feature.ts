import type { Geometry, Position } from 'geojson';

/**
 * What drawing programs write beside the facts: simplestyle-spec 1.1.0 (Mapbox, 2014; from memory) and what is left of KML's
 * styles. None of it says anything of the ground.
 */
const STYLE =
  /^(stroke|fill|marker|label|icon)(-[a-z-]+)?$|^(styleUrl|styleHash|styleMapHash|description|visibility|tessellate|altitudeMode)$/;

/** Kinds of the map that are areas: a closed line of such a kind is its edge. */
const AREAS: ReadonlySet<string> = new Set(['outline', 'island', 'reeds', 'lilies', 'trees', 'snag', 'building']);

interface Drawn {
  readonly id?: unknown;
  readonly properties?: Readonly<Record<string, unknown>> | null;
  readonly geometry?: Geometry | null;
}

/**
 * A feature as the map's schemas read it: without what drawing programs add (empty properties, colours), a closed line of
 * an area as its polygon, and a shape of several parts as one feature a part. An outline stays whole: two shores are a
 * fault for a person. Anything that is no such feature comes back as it was.
 */
export function plainFeatures(feature: unknown): readonly unknown[] {
  if (typeof feature !== 'object' || feature === null) return [feature];
  const { properties, geometry, ...rest } = feature as Drawn;
  if (typeof properties !== 'object' || properties === null) return [feature];
  const told = Object.fromEntries(
    Object.entries(properties).filter(([key, value]) => value !== null && value !== '' && !STYLE.test(key)),
  );
  return partsOf(geometry ?? null, String(told.kind)).map((part, index) => {
    const { id: _id, ...unnamed } = rest;
    return { ...(index === 0 ? rest : unnamed), properties: told, geometry: part };
  });
}

function partsOf(geometry: Geometry | null, kind: string): readonly (Geometry | null)[] {
  if (geometry?.type === 'MultiPolygon' && isSplit(geometry.coordinates, kind)) {
    return geometry.coordinates.map((coordinates) => ({ type: 'Polygon', coordinates }));
  }
  if (geometry?.type === 'MultiLineString' && isSplit(geometry.coordinates, kind)) {
    return geometry.coordinates.flatMap((coordinates) => partsOf({ type: 'LineString', coordinates }, kind));
  }
  if (geometry?.type === 'MultiPoint' && isSplit(geometry.coordinates, kind)) {
    return geometry.coordinates.map((coordinates) => ({ type: 'Point', coordinates }));
  }
  if (geometry?.type === 'LineString' && AREAS.has(kind) && isClosed(geometry.coordinates)) {
    return [{ type: 'Polygon', coordinates: [geometry.coordinates] }];
  }
  return [geometry];
}

function isSplit(parts: unknown, kind: string): boolean {
  return Array.isArray(parts) && parts.length > 0 && (parts.length === 1 || kind !== 'outline');
}

function isClosed(positions: readonly Position[]): boolean {
  if (!Array.isArray(positions) || positions.length < 4) return false;
  const [first, last] = [positions[0], positions.at(-1)];
  return Array.isArray(first) && Array.isArray(last) && first[0] === last[0] && first[1] === last[1];
}

/** A feature as a person finds it again: by its name, or by its shape and place. */
export function featureWords(feature: unknown): string {
  const { properties, geometry } = (feature ?? {}) as Drawn;
  const name = properties?.name;
  if (typeof name === 'string' && name.trim() !== '') return `"${name.slice(0, 60)}"`;
  const position = firstPosition((geometry as { coordinates?: unknown } | null | undefined)?.coordinates);
  const shape = typeof geometry?.type === 'string' ? `a ${geometry.type.slice(0, 24)}` : 'no shape';
  return position === null ? shape : `${shape} near ${position[1].toFixed(5)}, ${position[0].toFixed(5)}`;
}

function firstPosition(coordinates: unknown): readonly [number, number] | null {
  let inner: unknown = coordinates;
  while (Array.isArray(inner) && Array.isArray(inner[0])) inner = inner[0];
  const [lng, lat] = Array.isArray(inner) ? inner : [];
  return typeof lng === 'number' && typeof lat === 'number' ? [lng, lat] : null;
}
