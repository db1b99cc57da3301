import { describe, expect, it } from 'vitest';
import type { LatLng } from '../../src/domain/place.ts';
import { destination } from '../../src/ground/geodesy/destination.ts';
import { pegRound, straightDistances, walkingDistances } from '../../src/ground/peg-round.ts';

const CENTRE: LatLng = { lat: 52.75, lng: -0.05 };

/** A place so many metres east and north of the centre. */
function at(east: number, north: number): LatLng {
  return destination(CENTRE, (Math.atan2(east, north) * 180) / Math.PI, Math.hypot(east, north));
}

const pegs = [
  { peg: '1', at: at(0, 0) },
  { peg: '2', at: at(40, 0) },
  { peg: '3', at: at(20, 0) },
];

describe('the pegs in walking order', () => {
  it('begin and end at the car park that makes the round shortest', () => {
    const starts = [
      { name: 'far', at: at(-500, 0) },
      { name: 'near', at: at(-10, 0) },
    ];
    const round = pegRound(pegs, starts);
    expect(round.from?.name).toBe('near');
    expect(round.stops.map(({ peg }) => peg).sort()).toEqual(['1', '2', '3']);
    const legs = round.stops.map(({ legMetres }) => legMetres);
    expect(round.lengthMetres).toBeCloseTo(100, 3);
    // Either way round; the way back to the car park is no stop's leg.
    expect([50, 90]).toContain(Math.round(legs.reduce((sum, leg) => sum + leg, 0)));
    expect(round.isProven).toBe(true);
  });

  it('begin at the first peg and end at the last where no car park is drawn', () => {
    const round = pegRound(pegs, []);
    expect(round.from).toBeNull();
    expect(round.stops.map(({ peg }) => peg)).toEqual(['1', '3', '2']);
    expect(round.lengthMetres).toBeCloseTo(40, 3);
  });

  it('are none where the water has none', () => {
    expect(pegRound([], [])).toEqual({ from: null, stops: [], lengthMetres: 0, isProven: true });
    expect(pegRound([], [{ name: 'P', at: CENTRE }]).stops).toEqual([]);
  });
});

it('goes round an inlet by the path, not across the water', () => {
  const places = [at(0, 0), at(20, 0), at(500, 500)];
  const path = { id: 'round', line: [at(0, 0), at(0, 100), at(20, 100), at(20, 0)] };
  const { metres } = walkingDistances([path])(places);
  const straight = straightDistances(places).metres;
  expect(straight[1]).toBeCloseTo(20, 3);
  expect(metres[1]).toBeCloseTo(220, 1);
  // A place that no path reaches is walked to as the crow flies.
  expect(metres[2]).toBe(straight[2]);
  expect(metres[3]).toBeCloseTo(metres[1]!, 9);
});
