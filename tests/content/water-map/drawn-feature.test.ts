import { describe, expect, it } from 'vitest';
import { featureWords, plainFeatures } from '../../../src/content/water-map/drawn-feature.ts';

const SQUARE = [
  [0, 52],
  [0.001, 52],
  [0.001, 52.001],
  [0, 52],
];
const feature = (kind: string, geometry: object, more: object = {}) => ({
  type: 'Feature',
  id: 'a',
  properties: { kind, ...more },
  geometry,
});

describe('plainFeatures', () => {
  it('passes over what drawing programs add and keeps every fact', () => {
    const drawn = feature(
      'path',
      { type: 'LineString', coordinates: SQUARE },
      {
        name: '',
        surface: 'grass',
        stroke: '#ff0000',
        'stroke-width': 2,
        'marker-color': '#00ff00',
        fill: '#0000ff',
        'fill-opacity': 0.5,
        styleUrl: '#s',
        description: 'drawn on the train',
        steps: null,
      },
    );
    expect(plainFeatures(drawn)).toEqual([
      feature('path', { type: 'LineString', coordinates: SQUARE }, { surface: 'grass' }),
    ]);
  });

  it('reads a closed line of an area as its edge, and of anything else as a line', () => {
    const line = { type: 'LineString', coordinates: SQUARE };
    expect(plainFeatures(feature('lilies', line))).toEqual([
      feature('lilies', { type: 'Polygon', coordinates: [SQUARE] }),
    ]);
    expect(plainFeatures(feature('overhead-line', line))).toEqual([feature('overhead-line', line)]);
  });

  it('takes a shape of several parts apart, its id on the first, and leaves an outline of several to a person', () => {
    const two = { type: 'MultiPolygon', coordinates: [[SQUARE], [SQUARE]] };
    const parts = plainFeatures(feature('reeds', two)) as readonly { id?: string; geometry: { type: string } }[];
    expect(parts.map(({ id, geometry }) => [id, geometry.type])).toEqual([
      ['a', 'Polygon'],
      [undefined, 'Polygon'],
    ]);
    expect(plainFeatures(feature('outline', two))).toEqual([feature('outline', two)]);
    const one = { type: 'MultiPolygon', coordinates: [[SQUARE]] };
    expect(plainFeatures(feature('outline', one))).toEqual([
      feature('outline', { type: 'Polygon', coordinates: [SQUARE] }),
    ]);
  });

  it.each([null, 3, 'x', {}, { properties: null }, { properties: {}, geometry: { type: 'MultiPolygon' } }])(
    'gives %j back as it was, in one piece',
    (odd) => {
      expect(plainFeatures(odd)).toHaveLength(1);
    },
  );
});

describe('featureWords', () => {
  it.each([
    [feature('x', { type: 'Point', coordinates: [-0.05, 52.75] }, { name: 'Lily bed' }), '"Lily bed"'],
    [feature('x', { type: 'Polygon', coordinates: [[[-0.05, 52.75]]] }), 'a Polygon near 52.75000, -0.05000'],
    [{}, 'no shape'],
    [null, 'no shape'],
  ])('names %j', (odd, words) => {
    expect(featureWords(odd)).toBe(words);
  });
});
