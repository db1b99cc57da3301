import { describe, expect, it } from 'vitest';
import { mapFrame } from '../../src/atlas/map-frame.ts';
import { waterMap } from '../../src/atlas/water-map.ts';
import type { WaterMap } from '../../src/domain/map.ts';
import { examplePeg, exampleVenue } from '../domain/example-venue.ts';
import { exampleAtlas } from './example-atlas.ts';

const [PIT] = exampleVenue().waters;

function atlasWith(map: Partial<WaterMap>) {
  const pegs = [
    examplePeg('1', { at: { lat: 52.7499, lng: -0.0508 } }),
    examplePeg('2', { at: { lat: 52.7499, lng: -0.0506 }, status: 'closed', statusReason: 'Works.' }),
  ];
  return exampleAtlas({ venue: { waters: [{ ...PIT!, map: { ...PIT!.map, ...map } }], pegs } });
}

describe('waterMap', () => {
  it('places pegs north up and links them to their sheets', () => {
    const { pegs, water } = waterMap(atlasWith({}), 'pit');
    expect(pegs.map(({ href, label, closed }) => [href, label, closed])).toEqual([
      ['/pit/1/', 'Peg 1', false],
      ['/pit/2/', 'Peg 2, closed (Works.)', true],
    ]);
    expect(pegs[1]!.x).toBeGreaterThan(pegs[0]!.x);
    // The pegs stand south of the water: lower on the map than all of it.
    expect(pegs[0]!.y).toBeGreaterThan(Math.max(...water.map(([, y]) => y)));
  });

  it('shows every outermost peg whole', () => {
    const { pegs, width, height } = waterMap(atlasWith({}), 'pit');
    for (const { x, y } of pegs) {
      expect(Math.min(x, y, width - x, height - y)).toBeGreaterThan(54);
    }
  });

  it('takes in a gate close by but leaves out one far off', () => {
    const gate = (id: string, lat: number) => ({ id, kind: 'gate' as const, name: id, at: { lat, lng: -0.0505 } });
    const map = waterMap(atlasWith({ places: [gate('near', 52.7496), gate('far', 52.74)] }), 'pit');
    expect(map.places.map(({ name }) => name)).toEqual(['near']);
  });

  it('draws a line that crosses the map with its zone, whichever water it was mapped for', () => {
    const atlas = atlasWith({});
    const line = {
      id: 'line',
      name: 'Low line',
      line: [
        { lat: 52.749, lng: -0.0502 },
        { lat: 52.752, lng: -0.0502 },
      ],
    };
    const elsewhere = { ...PIT!, id: 'next', map: { ...PIT!.map, outline: [], overheadLines: [line] } };
    const both = { ...atlas, venue: { ...atlas.venue, waters: [...atlas.venue.waters, elsewhere] } };
    const map = waterMap(both, 'pit');
    expect(map.overheadLines.map(({ name }) => name)).toEqual(['Low line']);
    expect(map.standOffZones).toHaveLength(1);
  });

  it('has a scale bar of a round length', () => {
    expect(waterMap(atlasWith({}), 'pit').scaleBar.words).toMatch(/^(10|20|50) m$/);
  });

  it('is drawn for a water without a peg', () => {
    const atlas = exampleAtlas({ venue: { pegs: [] } });
    expect(waterMap(atlas, 'pit').pegs).toEqual([]);
  });
});

describe('mapFrame', () => {
  it('holds every position with the padding around it, to scale', () => {
    const a = { lat: 52.75, lng: -0.05 };
    const b = { lat: 52.751, lng: -0.049 };
    const frame = mapFrame([a, b], 10, 2);
    const [ax, ay] = frame.place(a);
    const [bx, by] = frame.place(b);
    expect(ax).toBeCloseTo(20, 5);
    expect(frame.height - ay).toBeCloseTo(20, -1);
    // 0.001° of latitude is 111.2 m at 52.75° N (WGS 84), so 222.5 units.
    expect(ay - by).toBeCloseTo(222.5, 0);
    expect(bx).toBeGreaterThan(ax);
    expect(frame.isInside(b)).toBe(true);
    expect(frame.isInside({ lat: 52.76, lng: -0.05 })).toBe(false);
  });
});
