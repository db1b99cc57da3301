import type { Feature, Geometry } from 'geojson';
import { geojsonPosition, type LatLng } from '../../../domain/place.ts';
import { distanceMetres } from '../../../ground/geodesy/geodesic-between.ts';
import type { DrawnThing } from './drawn-thing.ts';

/** A thing this near to one of its kind on the map is that one. */
const SAME_METRES = 15;

/** A water's map as it stands in its file: features nobody touches are written as they were read. */
export class MapSheet {
  readonly #features: Feature[];
  readonly #rest: Readonly<Record<string, unknown>>;
  /** Places in the list that a thing of this drawing has already: two of one name are two. */
  readonly #taken = new Set<number>();

  /** @param text the map's file, null where there is none; it has been read and checked as part of the folder */
  constructor(text: string | null) {
    const { features = [], ...rest } = (text === null ? {} : JSON.parse(text.replace(/^\ufeff/, ''))) as {
      features?: Feature[];
    };
    this.#features = [...features];
    this.#rest = { type: 'FeatureCollection', ...rest };
  }

  /**
   * Draws a thing: in place of the one it is on the map already, keeping what is known of that, or beside the others. An
   * overhead line that was there is never replaced.
   * @returns what changed, in words; null where nothing did
   */
  draw(kind: string, thing: DrawnThing): string | null {
    const geometry = geometryOf(thing);
    const title = `${kind.replaceAll('-', ' ')}${thing.name === '' ? '' : ` "${thing.name}"`}`;
    const index = this.#indexOf(kind, thing);
    const known = this.#features[index];
    this.#taken.add(known === undefined ? this.#features.length : index);
    if (known !== undefined && JSON.stringify(known.geometry) === JSON.stringify(geometry)) return null;
    if (known !== undefined && isAlike(known.geometry, geometry)) return null;
    if (known === undefined || kind === 'overhead-line') {
      const name = thing.name === '' ? {} : { name: thing.name };
      this.#features.push({ type: 'Feature', properties: { kind, ...name }, geometry });
      return known === undefined
        ? `${title}: drawn`
        : `${title}: drawn beside the line that is there, which stays; both count`;
    }
    this.#features[index] = { ...known, geometry };
    return `${title}: drawn anew`;
  }

  /** Where the thing is on the map already: drawn just so, else as what it is by name or place; -1 where it is not. */
  #indexOf(kind: string, thing: DrawnThing): number {
    const geometry = geometryOf(thing);
    const same = this.#features.map((feature) => this.#isSame(feature, kind, thing));
    const exact = this.#features.findIndex((feature, index) => same[index] && isAlike(feature.geometry, geometry));
    if (exact !== -1) return exact;
    // A point saved twice is one place; two shapes of one name are two parts.
    const isAgain = (feature: Feature): boolean =>
      geometry.type === 'Point' && isAlike(feature.geometry, geometry, SAME_METRES);
    return this.#features.findIndex((feature, index) => same[index] && (!this.#taken.has(index) || isAgain(feature)));
  }

  #isSame({ properties, geometry }: Feature, kind: string, thing: DrawnThing): boolean {
    if (properties?.kind !== kind) return false;
    if (kind === 'outline') return true;
    if (thing.name !== '' && properties.name !== undefined) return properties.name === thing.name;
    return isAlike(geometry, geometryOf(thing), SAME_METRES);
  }

  /** The map's file, a feature a line. */
  text(): string {
    const head = JSON.stringify(this.#rest).slice(0, -1);
    return `${head},"features":[\n${this.#features.map((feature) => JSON.stringify(feature)).join(',\n')}\n]}\n`;
  }
}

function geometryOf({ shape }: DrawnThing): Geometry {
  if (shape.type === 'point') return { type: 'Point', coordinates: geojsonPosition(shape.at) };
  if (shape.type === 'line') return { type: 'LineString', coordinates: shape.line.map(geojsonPosition) };
  return {
    type: 'Polygon',
    coordinates: [shape.ring, ...shape.holes].map((ring) => [...ring, ring[0]!].map(geojsonPosition)),
  };
}

/** Whether two shapes have the same points, each within a distance of its partner. */
function isAlike(a: Geometry, b: Geometry, metres = 0.05): boolean {
  const [first, second] = [pointsOf(a), pointsOf(b)];
  return (
    a.type === b.type &&
    first.length === second.length &&
    first.every((point, index) => distanceMetres(point, second[index]!) <= metres)
  );
}

function pointsOf(geometry: Geometry): readonly LatLng[] {
  const positions =
    geometry.type === 'Point'
      ? [geometry.coordinates]
      : geometry.type === 'LineString'
        ? geometry.coordinates
        : geometry.type === 'Polygon'
          ? geometry.coordinates.flat()
          : [];
  return positions.map(([lng = 0, lat = 0]) => ({ lat, lng }));
}
