import { describe, expect, it } from 'vitest';
import { type ContourLine, figurePlaces, type Pixel } from '../../../src/client/map/figure-places.ts';

const WINDOW: Pixel = [300, 200];
const across = (y: number, home: Pixel): ContourLine => ({
  home,
  lines: [
    [
      [-500, y],
      [900, y],
    ],
  ],
});

describe('the figures of contours', () => {
  it('stand at home while that is in sight', () => {
    expect(figurePlaces([across(60, [40, 60])], WINDOW)).toEqual([[40, 60]]);
  });

  it('go along their contour to the middle of the window where home is out of it', () => {
    expect(figurePlaces([across(60, [700, 60])], WINDOW)).toEqual([[150, 60]]);
  });

  it('stay at home where their contour does not cross the window, or has no length', () => {
    expect(figurePlaces([across(600, [700, 600]), { home: [-9, -9], lines: [[]] }], WINDOW)).toEqual([
      [700, 600],
      [-9, -9],
    ]);
  });

  it('never stand on one another', () => {
    expect(figurePlaces([across(60, [700, 60]), across(70, [700, 70]), across(120, [700, 120])], WINDOW)).toEqual([
      [150, 60],
      [700, 70],
      [150, 120],
    ]);
  });
});
