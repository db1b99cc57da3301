import { gpx, kml } from '@tmcw/togeojson';
import { DOMParser } from '@xmldom/xmldom';
import type { Feature, Geometry, Position } from 'geojson';
import { countWords } from '../../../domain/count-words.ts';
import type { LatLng } from '../../../domain/place.ts';
import { parseGridReference } from '../../../ground/national-grid.ts';
import { isArchive } from '../bounded-archive.ts';
import { headingWords } from '../headings.ts';
import { MAX_PAPER_BYTES, textCell } from '../paper.ts';
import type { Unread } from '../results/result-row.ts';
import { splitTable } from '../split-table.ts';
import { decodedText } from '../text-encoding.ts';
import { archivedText } from './archived-text.ts';
import type { DrawnThing } from './drawn-thing.ts';

export interface DrawingRead {
  readonly things: readonly DrawnThing[];
  readonly unread: readonly Unread[];
}

/**
 * Reads what a phone or a drawing program gives: GPX 1.0 and 1.1, KML and KMZ, GeoJSON (RFC 7946), or a table with
 * latitude and longitude or a grid reference. Nothing a file points to is fetched.
 * @throws RangeError with a sentence where the file is none of these
 */
export function readDrawing(file: string, bytes: Uint8Array): DrawingRead {
  if (bytes.length > MAX_PAPER_BYTES)
    throw new RangeError(`${file} is larger than ${MAX_PAPER_BYTES / 1024 / 1024} MB.`);
  const text = isArchive(bytes) ? archivedText(file, bytes, '.kml') : decodedText(bytes);
  const start = text.trimStart();
  if (start.startsWith('<')) return readXml(file, text);
  if (start.startsWith('{')) return readGeoJson(file, text);
  return readTable(file, text);
}

function readXml(file: string, text: string): DrawingRead {
  // A document type may define entities that unfold without end; neither GPX nor KML needs one.
  if (/<!DOCTYPE/i.test(text))
    throw new RangeError(`${file} declares a document type, which no GPX or KML needs: save it anew.`);
  const problems: string[] = [];
  let document: ReturnType<DOMParser['parseFromString']>;
  try {
    document = new DOMParser({
      onError: (level, message) => {
        if (level !== 'warning') problems.push(message);
      },
    }).parseFromString(text, 'text/xml');
  } catch (error) {
    problems.push(error instanceof Error ? error.message : String(error));
    throw new RangeError(`${file} is broken as XML: ${problems[0]?.split('\n')[0]}`);
  }
  const root = document.documentElement?.nodeName.replace(/^.*:/, '') ?? '';
  if (root !== 'gpx' && root !== 'kml') throw new RangeError(`${file} begins with <${root}>, expected GPX or KML.`);
  const { features } = root === 'gpx' ? gpx(document) : kml(document);
  const links = document.getElementsByTagName('NetworkLink').length;
  const read = thingsOf(file, features as readonly Feature<Geometry | null>[]);
  if (links === 0) return read;
  const why = 'it points to a file elsewhere, and nothing is fetched: save that one and import it';
  return { ...read, unread: [...read.unread, { place: file, what: countWords(links, 'network link'), why }] };
}

function readGeoJson(file: string, text: string): DrawingRead {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    throw new RangeError(`${file} is broken as JSON: ${error instanceof Error ? error.message : error}`);
  }
  const { type, features, geometry } = value as { type?: string; features?: unknown; geometry?: unknown };
  if (type === 'FeatureCollection' && Array.isArray(features))
    return thingsOf(file, features as readonly Feature<Geometry | null>[]);
  if (type === 'Feature' && geometry !== undefined) return thingsOf(file, [value as Feature<Geometry | null>]);
  throw new RangeError(`${file} is no GeoJSON of features: expected a FeatureCollection.`);
}

function thingsOf(file: string, features: readonly Feature<Geometry | null>[]): DrawingRead {
  const things: DrawnThing[] = [];
  const unread: Unread[] = [];
  features.forEach((feature, index) => {
    const properties = (feature?.properties ?? {}) as Readonly<Record<string, unknown>>;
    const word = (key: string): string => {
      const value = properties[key];
      if (typeof value === 'object' && value !== null && 'value' in value) return textCell(String(value.value)).text;
      return typeof value === 'string' || typeof value === 'number' ? textCell(String(value)).text : '';
    };
    const name = word('name') || word('title');
    const place = `${file}, ${name === '' ? `thing ${index + 1}` : `"${name}"`}`;
    const shapes = shapesOf(feature?.geometry ?? null);
    if (shapes.length === 0)
      unread.push({ place, what: 'a thing without a position', why: 'it has no geometry that can be read' });
    for (const shape of shapes) {
      things.push({
        file,
        name,
        note: [word('desc'), word('description'), word('cmt'), word('sym')]
          .filter((one) => one !== '')
          .join(' ')
          .replace(/<[^>]*>/g, ' '),
        kind: word('kind') || null,
        waterText: word('water') || null,
        shape,
        isTrack: properties._gpxType === 'trk',
        place,
      });
    }
  });
  return { things, unread };
}

/** Multi-part shapes come apart, heights are dropped, rings lose their repeated corner. A shape with a place off the earth is none. */
function shapesOf(geometry: Geometry | null): readonly DrawnThing['shape'][] {
  switch (geometry?.type) {
    case 'Point':
      return pointsOf([geometry.coordinates]).map((at) => ({ type: 'point', at }));
    case 'MultiPoint':
      return pointsOf(geometry.coordinates).map((at) => ({ type: 'point', at }));
    case 'LineString':
      return lineOf(geometry.coordinates);
    case 'MultiLineString':
      return geometry.coordinates.flatMap(lineOf);
    case 'Polygon':
      return areaOf(geometry.coordinates);
    case 'MultiPolygon':
      return geometry.coordinates.flatMap(areaOf);
    case 'GeometryCollection':
      return geometry.geometries.flatMap(shapesOf);
    default:
      return [];
  }
}

function pointsOf(positions: readonly Position[]): readonly LatLng[] {
  return positions.flatMap((position) => {
    const [lng, lat] = position ?? [];
    const isPlace = Number.isFinite(lng) && Number.isFinite(lat) && Math.abs(lat!) <= 90 && Math.abs(lng!) <= 180;
    return isPlace ? [{ lat: lat!, lng: lng! }] : [];
  });
}

function lineOf(positions: readonly Position[]): readonly DrawnThing['shape'][] {
  const line = pointsOf(positions);
  return line.length < 2 || line.length < positions.length ? [] : [{ type: 'line', line }];
}

function areaOf(rings: readonly (readonly Position[])[]): readonly DrawnThing['shape'][] {
  const [ring = [], ...holes] = rings.map((positions) => openRing(pointsOf(positions)));
  return ring.length < 3 || ring.length < (rings[0]?.length ?? 0) - 1 ? [] : [{ type: 'area', ring, holes }];
}

/** A ring without its first corner at the end, and without corners written twice. */
function openRing(ring: readonly LatLng[]): readonly LatLng[] {
  return ring.filter(({ lat, lng }, index) => {
    const next = ring[(index + 1) % ring.length]!;
    return ring.length === 1 || next.lat !== lat || next.lng !== lng;
  });
}

const COLUMNS = {
  lat: /^(lat|latitude|y)$/,
  lng: /^(lon|lng|long|longitude|x)$/,
  grid: /^(grid|grid ref|grid reference|os grid|os grid reference|ngr)$/,
  name: /^(name|peg|peg no|peg number|label|title|place|swim)$/,
  water: /^(water|pool|lake|pond)$/,
  note: /^(note|notes|description|desc|comment|type|what)$/,
} as const;

function readTable(file: string, text: string): DrawingRead {
  const isHead = (row: readonly string[]): boolean => {
    const found = columnsOf(row);
    return found.name !== -1 && (found.grid !== -1 || (found.lat !== -1 && found.lng !== -1));
  };
  const rows = splitTable(text, isHead);
  const head = rows.findIndex(isHead);
  if (head === -1) {
    throw new RangeError(
      `${file}: expected GPX, KML, KMZ, GeoJSON, or a table with headings for a name and for latitude and longitude or a grid reference.`,
    );
  }
  const columns = columnsOf(rows[head]!);
  const things: DrawnThing[] = [];
  const unread: Unread[] = [];
  rows.slice(head + 1).forEach((row, index) => {
    if (row.every((cell) => cell.trim() === '')) return;
    const cell = (column: keyof typeof COLUMNS): string =>
      columns[column] === -1 ? '' : textCell(row[columns[column]] ?? '').text;
    const place = `${file}, row ${head + index + 2}`;
    const at = positionOf(cell('lat'), cell('lng'), cell('grid'));
    if (at === null) {
      unread.push({ place, what: cell('name') || 'a row', why: 'no position that can be read' });
      return;
    }
    things.push({
      file,
      name: cell('name'),
      note: cell('note'),
      kind: null,
      waterText: cell('water') || null,
      shape: { type: 'point', at },
      isTrack: false,
      place,
    });
  });
  return { things, unread };
}

function columnsOf(row: readonly string[]): Readonly<Record<keyof typeof COLUMNS, number>> {
  const words = row.map(headingWords);
  const of = (column: keyof typeof COLUMNS): number => words.findIndex((word) => COLUMNS[column].test(word));
  return { lat: of('lat'), lng: of('lng'), grid: of('grid'), name: of('name'), water: of('water'), note: of('note') };
}

function positionOf(lat: string, lng: string, grid: string): LatLng | null {
  const degrees = (text: string): number =>
    /^[-−+]?\d{1,3}(?:\.\d+)?$/.test(text) ? Number(text.replace('−', '-')) : Number.NaN;
  const [north, east] = [degrees(lat), degrees(lng)];
  if (Math.abs(north) <= 90 && Math.abs(east) <= 180) return { lat: north, lng: east };
  return grid === '' ? null : parseGridReference(grid.toUpperCase());
}
