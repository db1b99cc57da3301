import type { Feature, Position } from 'geojson';
import { describe, expect, it } from 'vitest';
import { venueGeojson, waterGeojson } from '../../src/atlas/venue-geojson.ts';
import { examplePeg, exampleVenue } from '../domain/example-venue.ts';
import { exampleAtlas } from './example-atlas.ts';

const [PIT] = exampleVenue().waters;
const ISLAND = {
  id: 'i',
  name: 'The Isle',
  ring: [
    { lat: 52.7504, lng: -0.0506 },
    { lat: 52.7504, lng: -0.0504 },
    { lat: 52.7506, lng: -0.0504 },
  ],
};
const LINE = {
  id: 'line',
  name: 'Low line',
  line: [
    { lat: 52.749, lng: -0.048 },
    { lat: 52.752, lng: -0.048 },
  ],
};
const atlas = exampleAtlas({
  venue: {
    waters: [{ ...PIT!, map: { ...PIT!.map, islands: [ISLAND], overheadLines: [LINE] } }],
    pegs: [
      examplePeg('1', { isFacingEstimated: true }),
      examplePeg('2', { status: 'closed', statusReason: 'Below the line.' }),
    ],
  },
  water: {
    depth: {
      meanMetres: 1,
      maximumMetres: 2,
      volumeCubicMetres: 7000,
      soundings: 9,
      uncorrected: 0,
      plumbedShare: 1,
      unused: [],
      isobaths: [{ depthMetres: 1, lines: [ISLAND.ring] }],
    },
  },
});
const { features } = venueGeojson(atlas);
const pegProperties = () => ofKind('peg').map(({ properties }) => properties ?? {});
const ofKind = (kind: string) => features.filter(({ properties }) => properties?.kind === kind);

/** RFC 7946, section 3.1.6: closed, at least four positions, outer rings anticlockwise, holes clockwise. */
function expectRings(rings: readonly Position[][]): void {
  rings.forEach((ring, index) => {
    expect(ring.length).toBeGreaterThanOrEqual(4);
    expect(ring[0]).toEqual(ring.at(-1));
    const area = ring.slice(1).reduce((sum, [x = 0, y = 0], i) => {
      const [px = 0, py = 0] = ring[i]!;
      return sum + px * y - x * py;
    }, 0);
    expect(Math.sign(area)).toBe(index === 0 ? 1 : -1);
  });
}

function positionsOf({ geometry }: Feature): Position[] {
  return (JSON.stringify(geometry).match(/\[-?[\d.]+,-?[\d.]+\]/g) ?? []).map((text) => JSON.parse(text) as Position);
}

// RFC 7946, The GeoJSON Format (IETF 2016).
describe('venueGeojson', () => {
  it('holds outline, islands, pegs, lines, zone and isobaths, each with its kind and water', () => {
    const kinds = features.map(({ properties }) => properties?.kind);
    expect(new Set(kinds)).toEqual(new Set(['outline', 'island', 'isobath', 'overhead-line', 'stand-off-zone', 'peg']));
    expect(features.every(({ type, properties }) => type === 'Feature' && properties?.water === 'pit')).toBe(true);
  });

  it('writes longitude first, within its bounds', () => {
    for (const [lng, lat] of features.flatMap(positionsOf)) {
      expect(lng).toBeCloseTo(-0.05, 1);
      expect(lat).toBeCloseTo(52.75, 1);
    }
  });

  it('closes rings and turns them as the standard asks, islands being holes of the outline', () => {
    const [outline] = ofKind('outline');
    if (outline?.geometry.type !== 'Polygon') throw new Error('the outline is no polygon');
    expect(outline.geometry.coordinates).toHaveLength(2);
    expectRings(outline.geometry.coordinates);
    for (const { geometry } of ofKind('island')) if (geometry.type === 'Polygon') expectRings(geometry.coordinates);
    const [zone] = ofKind('stand-off-zone');
    if (zone?.geometry.type !== 'MultiPolygon') throw new Error('the zone is no multipolygon');
    for (const polygon of zone.geometry.coordinates) expectRings(polygon);
  });

  it('says of a closed peg that it is, and why', () => {
    expect(ofKind('peg').map(({ properties }) => [properties?.status, properties?.reason])).toEqual([
      ['open', null],
      ['closed', 'Below the line.'],
    ]);
  });

  it('has no member the standard has taken out', () => {
    expect(Object.keys(venueGeojson(atlas))).toEqual(['type', 'features']);
  });
});

it('waterGeojson puts the lines of every water on the map of each', () => {
  const next = { ...PIT!, id: 'next' };
  const two = { ...atlas, venue: { ...atlas.venue, waters: [...atlas.venue.waters, next] } };
  const { features: ofNext } = waterGeojson(
    {
      ...two,
      watersById: new Map(two.venue.waters.map((water) => [water.id, water])),
      survey: { ...two.survey, waters: { ...two.survey.waters, next: two.survey.waters.pit! } },
    },
    'next',
  );
  expect(ofNext.some(({ properties }) => properties?.kind === 'overhead-line' && properties.water === 'pit')).toBe(
    true,
  );
});

it('says of a facing that nobody wrote that the shore told it', () => {
  expect(pegProperties().map(({ peg, facingEstimated }) => [peg, facingEstimated])).toEqual([
    ['1', true],
    ['2', undefined],
  ]);
});
