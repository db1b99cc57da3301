import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { MapPath, MapPlace, Water } from '../../../src/domain/map.ts';
import { localPlane } from '../../../src/ground/geodesy/local-plane.ts';
import { venueWalks } from '../../../src/ground/walk/venue-walks.ts';
import { wayPaths } from '../../../src/ground/walk/way-paths.ts';
import { EXAMPLE_SETTINGS, examplePeg, exampleVenue } from '../../domain/example-venue.ts';
import { pondMap, spot } from '../example-pond.ts';

const { toPlane } = localPlane(spot(0, 0));
type Points = readonly (readonly [number, number])[];
const path = (id: string, points: Points, facts: Partial<MapPath> = {}): MapPath => ({
  id,
  line: points.map(([x, y]) => spot(x, y)),
  ...facts,
});
const place = (kind: MapPlace['kind'], x: number, y: number): MapPlace => ({
  id: kind,
  kind,
  name: kind,
  at: spot(x, y),
});
const CAR_PARK = place('car-park', 0, 0);

function waterWith(id: string, paths: readonly MapPath[], places: readonly MapPlace[] = [CAR_PARK]): Water {
  const [pit] = exampleVenue().waters;
  return { ...pit!, id, map: pondMap({ places, paths }) };
}

function usedTo(waters: readonly Water[], [x, y]: readonly [number, number], helpFrom: readonly MapPlace[] = []) {
  const { graph } = venueWalks(waters, EXAMPLE_SETTINGS.standOff, toPlane);
  return wayPaths(waters, graph, toPlane)(spot(x, y), helpFrom);
}

const STEM = path('stem', [
  [0, 0],
  [100, 0],
]);
const LEFT = path('left', [
  [100, 0],
  [100, 100],
]);
const RIGHT = path('right', [
  [100, 0],
  [200, 0],
]);

describe('the paths a way to a peg runs along', () => {
  it('are those of the shortest way and no other', () => {
    const water = waterWith('pit', [STEM, LEFT, RIGHT]);
    expect(usedTo([water], [102, 90])?.toSorted()).toEqual(['pit/left', 'pit/stem']);
    expect(usedTo([water], [190, 5])?.toSorted()).toEqual(['pit/right', 'pit/stem']);
  });

  it('are named by their own water where two waters have a path of the same id', () => {
    const waters = [waterWith('pit', [STEM]), waterWith('lake', [{ ...RIGHT, id: 'stem' }], [])];
    expect(usedTo(waters, [190, 5])?.toSorted()).toEqual(['lake/stem', 'pit/stem']);
  });

  it('are those without a step too, and those by which help comes', () => {
    const steps = path(
      'steps',
      [
        [0, 0],
        [100, 100],
      ],
      { steps: 8 },
    );
    const gate = place('gate', 198, 1);
    const water = waterWith('pit', [steps, STEM, LEFT, RIGHT], [CAR_PARK, gate]);
    expect(usedTo([water], [100, 101])?.toSorted()).toEqual(['pit/left', 'pit/stem', 'pit/steps']);
    expect(usedTo([water], [100, 101], [gate])).toContain('pit/right');
  });

  it('are not known where no car park is joined to the peg', () => {
    expect(usedTo([waterWith('pit', [STEM])], [100, 200])).toBeNull();
    expect(usedTo([waterWith('pit', [STEM], [])], [50, 5])).toBeNull();
  });

  it('alone give as short a way as all paths together', () => {
    const point = fc.tuple(fc.integer({ min: 0, max: 8 }), fc.integer({ min: 0, max: 8 }));
    const lines = fc.array(fc.array(point, { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 7 });
    let ways = 0;
    fc.assert(
      fc.property(lines, point, (drawn, [x, y]) => {
        const paths = drawn.map((points, index) =>
          path(
            `p${index}`,
            points.map(([px, py]): [number, number] => [20 * px, 20 * py]),
          ),
        );
        const peg = examplePeg('1', { at: spot(20 * x, 20 * y + 3) });
        const shortest = (among: readonly MapPath[]) =>
          venueWalks([waterWith('pit', among)], EXAMPLE_SETTINGS.standOff, toPlane).walksTo(peg)[0]?.distanceMetres;
        const used = usedTo([waterWith('pit', paths)], [20 * x, 20 * y + 3]);
        expect(used === null).toBe(shortest(paths) === undefined);
        if (used === null) return;
        ways++;
        expect(shortest(paths.filter(({ id }) => used.includes(`pit/${id}`)))).toBeCloseTo(shortest(paths)!, 6);
      }),
      { numRuns: 150 },
    );
    expect(ways).toBeGreaterThan(30);
  });
});
