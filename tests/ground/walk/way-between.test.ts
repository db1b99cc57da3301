import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { MapPath, MapPlace, OverheadLine } from '../../../src/domain/map.ts';
import { distanceMetres } from '../../../src/ground/geodesy/geodesic-between.ts';
import { localPlane } from '../../../src/ground/geodesy/local-plane.ts';
import { linesToPass } from '../../../src/ground/walk/lines-near.ts';
import { venueWalks } from '../../../src/ground/walk/venue-walks.ts';
import { wayFinder } from '../../../src/ground/walk/way-between.ts';
import { EXAMPLE_SETTINGS, examplePeg, exampleVenue } from '../../domain/example-venue.ts';
import { pondMap, spot } from '../example-pond.ts';

const CAR_PARK: MapPlace = { id: 'cp', kind: 'car-park', name: 'Main', at: spot(-200, -40) };
const path = (id: string, ...points: readonly (readonly [number, number])[]): MapPath => ({
  id,
  line: points.map(([x, y]) => spot(x, y)),
});
const overhead = (x: number, from: number, to: number): OverheadLine => ({
  id: 'l',
  name: 'the line',
  line: [spot(x, from), spot(x, to)],
});
/** Along the bank below the line, or round it behind. */
const BANK = path('bank', [-200, -40], [200, -40]);
const ROUND = path('round', [-190, -40], [-190, -300], [190, -300], [190, -40]);
const LINE = overhead(0, -80, 80);

const finder = (paths: readonly MapPath[], lines: readonly OverheadLine[] = []) =>
  wayFinder(paths, linesToPass(lines, EXAMPLE_SETTINGS.standOff));

describe('the way from one place to another', () => {
  it('is as long as it is drawn, from where somebody stands to the peg', () => {
    fc.assert(
      fc.property(fc.integer({ min: -200, max: 200 }), fc.integer({ min: -200, max: 200 }), (a, b) => {
        const [from, to] = [spot(a, -50), spot(b, -35)];
        const way = finder([BANK, ROUND])(from, to)!;
        const drawn = way.points.slice(1).reduce((sum, at, i) => sum + distanceMetres(way.points[i]!, at), 0);
        expect(drawn).toBeCloseTo(way.metres, 1);
        expect([way.points[0], way.points.at(-1)]).toEqual([from, to]);
      }),
    );
  });

  it('goes round an overhead line where it can, and names it where it cannot', () => {
    const [from, to] = [spot(-195, -40), spot(195, -40)];
    const round = finder([BANK, ROUND], [LINE])(from, to)!;
    expect(round.facts.lines).toEqual([]);
    expect(round.paths.map(({ id }) => id)).toContain('round');
    expect(round.metres).toBeGreaterThan(800);
    const below = finder([BANK], [LINE])(from, to)!;
    expect(below.facts.lines).toEqual([0]);
    expect(below.metres).toBeCloseTo(390, 0);
    expect(finder([BANK, ROUND])(from, to)!.metres).toBeCloseTo(390, 0);
  });

  it('is none across a gap, or from a place that no path is near', () => {
    expect(finder([BANK])(spot(0, -100), spot(50, -40))).toBeNull();
    expect(finder([BANK, path('apart', [0, 90], [90, 90])])(spot(0, -40), spot(50, 90))).toBeNull();
    expect(finder([])(spot(0, 0), spot(1, 1))).toBeNull();
  });

  it('is the walk that the peg’s sheet tells first, as long and below the same lines', () => {
    const [pit] = exampleVenue().waters;
    const y = fc.integer({ min: -60, max: -30 });
    fc.assert(
      fc.property(
        fc.integer({ min: -190, max: 190 }),
        fc.option(fc.tuple(fc.integer({ min: -150, max: 150 }), y)),
        (x, line) => {
          const overheadLines = line === null ? [] : [overhead(line[0], line[1] - 40, line[1] + 90)];
          const map = pondMap({ places: [CAR_PARK], paths: [BANK, ROUND], overheadLines });
          const peg = examplePeg('1', { at: spot(x, -31), facingDegrees: 0 });
          const { toPlane } = localPlane(spot(-200, -40));
          const walks = venueWalks([{ ...pit!, map }], EXAMPLE_SETTINGS.standOff, toPlane).walksTo(peg);
          const told = walks.find(({ underLines }) => underLines.length === 0) ?? walks[0]!;
          const way = finder([BANK, ROUND], overheadLines)(CAR_PARK.at, peg.at)!;
          expect(way.metres).toBeCloseTo(told.distanceMetres, 1);
          expect(way.facts.lines.length).toBe(told.underLines.length);
        },
      ),
    );
  });
});
