import { describe, expect, test } from 'vitest';
import type { MapPath, MapPlace, OverheadLine, WaterMap } from '../../../src/domain/map.ts';
import type { Peg } from '../../../src/domain/peg.ts';
import { localPlane } from '../../../src/ground/geodesy/local-plane.ts';
import { nearestPlace } from '../../../src/ground/walk/nearest-place.ts';
import { venueWalks } from '../../../src/ground/walk/venue-walks.ts';
import { EXAMPLE_SETTINGS, examplePeg, exampleVenue } from '../../domain/example-venue.ts';
import { pondMap, spot } from '../example-pond.ts';

const { toPlane } = localPlane(spot(0, 0));
const CAR_PARK: MapPlace = { id: 'cp', kind: 'car-park', name: 'Main', at: spot(-100, -40) };
const path = (id: string, points: readonly (readonly [number, number])[], facts: Partial<MapPath> = {}): MapPath => ({
  id,
  line: points.map(([x, y]) => spot(x, y)),
  ...facts,
});
const PEG = examplePeg('1', { at: spot(0, -31), facingDegrees: 0 });

function walksOf(map: Partial<WaterMap>, peg: Peg = PEG) {
  const [pit] = exampleVenue().waters;
  const water = { ...pit!, map: pondMap({ places: [CAR_PARK], ...map }) };
  const walks = venueWalks([water], EXAMPLE_SETTINGS.standOff, toPlane);
  return { all: walks.walksTo(peg), stepFree: walks.stepFreeWalkTo(peg), graph: walks.graph };
}

describe('the walk to a peg', () => {
  test('is the shortest along the paths, with the step off them at its end', () => {
    const { all } = walksOf({
      paths: [
        path('bank', [
          [-100, -40],
          [0, -40],
        ]),
      ],
    });
    expect(all).toHaveLength(1);
    expect(all[0]).toMatchObject({
      from: 'Main',
      steps: 0,
      steepest: null,
      stepFree: null,
      notStated: ['steps', 'gradient', 'width'],
      underLines: [],
    });
    expect(all[0]!.distanceMetres).toBeCloseTo(109, 2);
  });

  test('counts the steps of each path once, and takes the steepest and the narrowest of all', () => {
    const { all } = walksOf({
      paths: [
        path(
          'a',
          [
            [-100, -40],
            [-60, -40],
            [-50, -40],
          ],
          { steps: 4, gradient: 0.05, widthMetres: 1.5 },
        ),
        path(
          'b',
          [
            [-50, -40],
            [0, -40],
          ],
          { steps: 0, gradient: 0.1, widthMetres: 0.9 },
        ),
      ],
    });
    expect(all[0]).toMatchObject({ steps: 4, steepest: 0.1, narrowestMetres: 0.9, stepFree: false, notStated: [] });
  });

  test.each([
    ['first', 0],
    ['last', 1],
  ])('tells nothing of a path that it only meets where it begins or ends, which is drawn %s', (_, place) => {
    const own = path(
      'own',
      [
        [-100, -40],
        [0, -40],
      ],
      { stepFree: true, widthMetres: 1.5 },
    );
    const met = [
      path(
        'beyond the peg',
        [
          [0, -40],
          [60, -40],
        ],
        { steps: 9, gradient: 0.2, widthMetres: 0.5 },
      ),
      path(
        'behind the car park',
        [
          [-100, -40],
          [-150, -40],
        ],
        { steps: 7 },
      ),
    ];
    const { all } = walksOf({ paths: place === 0 ? [...met, own] : [own, ...met] });
    expect(all[0]).toMatchObject({ steps: 0, steepest: null, narrowestMetres: 1.5, stepFree: true });
  });

  test('tells of the path it comes out on where it runs along none: silence is not step-free', () => {
    const { all } = walksOf({
      places: [{ ...CAR_PARK, at: spot(0, -49) }],
      paths: [
        path(
          'across',
          [
            [0, -40],
            [60, -40],
          ],
          { steps: 2 },
        ),
      ],
    });
    expect(all[0]).toMatchObject({ steps: 2, stepFree: false });
  });

  test('ends with the steps of the peg’s own bank', () => {
    const { all } = walksOf(
      {
        paths: [
          path(
            'a',
            [
              [-100, -40],
              [0, -40],
            ],
            { stepFree: true },
          ),
        ],
      },
      { ...PEG, bank: { steps: 6 } },
    );
    expect(all[0]).toMatchObject({ steps: 6, stepFree: false });
  });

  test('tells the longer way without steps beside the shortest', () => {
    const { all, stepFree } = walksOf({
      paths: [
        path(
          'steep',
          [
            [-100, -40],
            [0, -40],
          ],
          { steps: 9 },
        ),
        path(
          'round',
          [
            [-100, -40],
            [-100, -60],
            [0, -60],
          ],
          { stepFree: true },
        ),
        path(
          'end',
          [
            [0, -60],
            [0, -32],
          ],
          { stepFree: true },
        ),
      ],
    });
    expect(all[0]!.steps).toBe(9);
    expect(all[0]!.stepFreeMetres).toBeCloseTo(149, 1);
    expect(stepFree).toMatchObject({ stepFree: true, steps: 0 });
  });

  test('prefers a way known to be step-free to a shorter one that does not say', () => {
    const { all, stepFree } = walksOf({
      paths: [
        path('silent', [
          [-100, -40],
          [0, -40],
        ]),
        path(
          'round',
          [
            [-100, -40],
            [-100, -60],
            [0, -60],
          ],
          { stepFree: true },
        ),
        path(
          'end',
          [
            [0, -60],
            [0, -32],
          ],
          { stepFree: true },
        ),
      ],
    });
    expect(all[0]!.stepFree).toBeNull();
    expect(stepFree!.distanceMetres).toBeCloseTo(149, 1);
  });

  test('names the overhead lines it passes below or inside the stand-off, and no other', () => {
    const line = (id: string, y: number): OverheadLine => ({ id, name: id, line: [spot(-60, y), spot(-60, y + 1)] });
    const { all } = walksOf({
      paths: [
        path('a', [
          [-100, -40],
          [0, -40],
        ]),
      ],
      overheadLines: [line('over it', -40), line('33 m off', -74), line('35 m off', -76)],
    });
    expect(all[0]!.underLines).toEqual(['over it', '33 m off']);
  });

  test('names the lines over a car park on the same stretch as the peg', () => {
    const { all } = walksOf({
      places: [{ ...CAR_PARK, at: spot(-60, -20) }],
      paths: [
        path('a', [
          [-200, -40],
          [100, -40],
        ]),
      ],
      overheadLines: [{ id: 'l', name: 'over the car park', line: [spot(-90, 12), spot(-30, 12)] }],
    });
    expect(all[0]!.underLines).toEqual(['over the car park']);
  });

  test('does not name a line beside a part of the path that is not walked', () => {
    const { all } = walksOf({
      paths: [
        path('a', [
          [-200, -40],
          [0, -40],
        ]),
      ],
      overheadLines: [{ id: 'l', name: 'l', line: [spot(-180, -80), spot(-180, 0)] }],
    });
    expect(all[0]!.underLines).toEqual([]);
  });

  test('is none where the paths are in pieces, where no path is near, or where there is no path', () => {
    const pieces = [
      path('a', [
        [-100, -40],
        [-50, -40],
      ]),
      path('b', [
        [-40, -40],
        [0, -40],
      ]),
    ];
    expect(walksOf({ paths: pieces }).all).toEqual([]);
    expect(
      walksOf({
        paths: [
          path('a', [
            [-100, -40],
            [-40, -40],
          ]),
        ],
      }).all,
    ).toEqual([]);
    expect(walksOf({ paths: [] }).all).toEqual([]);
    expect(walksOf({ paths: [] }).stepFree).toBeNull();
  });

  test('starts at every car park, the nearest first', () => {
    const { all } = walksOf({
      places: [CAR_PARK, { ...CAR_PARK, id: 'cp2', name: 'Lane', at: spot(40, -40) }],
      paths: [
        path('a', [
          [-100, -40],
          [40, -40],
        ]),
      ],
    });
    expect(all.map(({ from }) => from)).toEqual(['Lane', 'Main']);
  });

  test('starts at no other place, however near', () => {
    const { all } = walksOf({
      places: [CAR_PARK, { id: 'tl', kind: 'throw-line', name: 'Throw line', at: spot(-10, -40) }],
      paths: [
        path('a', [
          [-100, -40],
          [0, -40],
        ]),
      ],
    });
    expect(all.map(({ from }) => from)).toEqual(['Main']);
  });

  test('tells a way without steps beside the walk that has some, and not beside one that has none', () => {
    const { all } = walksOf({
      places: [CAR_PARK, { ...CAR_PARK, id: 'cp2', name: 'Lane', at: spot(100, -40) }],
      paths: [
        path(
          'steep',
          [
            [-100, -40],
            [-10, -40],
          ],
          { steps: 9 },
        ),
        path(
          'flat',
          [
            [-10, -40],
            [100, -40],
          ],
          { stepFree: true },
        ),
        path(
          'round',
          [
            [-100, -40],
            [-100, -60],
            [100, -60],
            [100, -40],
          ],
          { stepFree: true },
        ),
      ],
    });
    expect(all.map(({ from, stepFreeMetres }) => [from, stepFreeMetres === undefined])).toEqual([
      ['Lane', true],
      ['Main', false],
    ]);
    expect(all[1]!.stepFreeMetres).toBeCloseTo(20 + 200 + 20 + 100 + 9, 1);
  });
});

describe('the nearest place', () => {
  const place = (name: string, x: number, y: number): MapPlace => ({
    id: name,
    kind: 'throw-line',
    name,
    at: spot(x, y),
  });
  const { graph } = walksOf({
    paths: [
      path('a', [
        [-100, -40],
        [100, -40],
      ]),
      path('b', [
        [300, 0],
        [310, 0],
      ]),
    ],
  });
  const nearest = (...places: MapPlace[]) => nearestPlace(places, graph, toPlane)(PEG.at);

  test('is the nearest along the paths, with its straight distance and bearing', () => {
    const found = nearest(place('east', 60, -40), place('west', -50, -40))!;
    expect(found.name).toBe('west');
    expect(found.walkMetres).toBeCloseTo(59, 2);
    expect(found.distanceMetres).toBeCloseTo(Math.hypot(50, 9), 2);
    expect(found.bearingDegrees).toBeCloseTo(180 + (Math.atan2(50, 9) * 180) / Math.PI, 2);
  });

  test('is told in a straight line where the paths do not join it, and has no walk', () => {
    expect(nearest(place('across', 0, 31))).toMatchObject({ name: 'across', walkMetres: null });
    expect(nearest(place('island of paths', 305, 0))).toMatchObject({ name: 'island of paths', walkMetres: null });
  });

  test('is one off the paths where that lies nearer than any along them', () => {
    expect(nearest(place('along', 90, -40), place('off', 0, 25))!.name).toBe('off');
  });

  test('is none where there is no place', () => {
    expect(nearest()).toBeNull();
  });
});
