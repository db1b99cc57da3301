import { describe, expect, it } from 'vitest';
import { calibration } from '../../../src/atlas/drawing/calibration.ts';
import { framingYear } from '../../../src/atlas/drawing/framing-year.ts';
import { levelAndTemperature } from '../../../src/atlas/drawing/level-and-temperature.ts';
import { makeUpBars } from '../../../src/atlas/drawing/make-up-bars.ts';
import { compareDrawing, expectWellFormed } from './compare-drawing.ts';

const LETTERS = 'JFMAMJJASOND';
const YEAR = Array.from({ length: 12 }, (_, month) => month);

describe('weight to frame and to win through the year', () => {
  const months = YEAR.map((month) => {
    if (month === 1) return { frame: null, win: null };
    const frame = 30 + month * 2;
    return {
      frame: { middle: frame, low: frame * 0.7, high: frame * 1.3, words: String(frame) },
      win: month === 4 ? null : { middle: frame * 1.5, low: frame * 1.2, high: frame * 2, words: String(frame * 1.5) },
    };
  });

  it('is drawn as committed, with a gap where no event says', () => {
    const svg = framingYear(months, 11, 'lb', 'weights');
    expectWellFormed(svg);
    expect(svg.match(/class="dot"/g)).toHaveLength(11);
    expect(svg.match(/class="hollow"/g)).toHaveLength(10);
    expect(svg).toContain('<g class="bar solid now" data-month="11">');
    compareDrawing('framing-year', svg);
  });

  it('is an empty frame where nothing is known', () => {
    expectWellFormed(
      framingYear(
        YEAR.map(() => ({ frame: null, win: null })),
        1,
        'kg',
        'x',
      ),
    );
  });
});

describe('what framing bags were made of', () => {
  const bars = YEAR.map((month) => ({
    letter: LETTERS.charAt(month),
    shares: month === 1 ? null : [0.2 + month * 0.02, 0.5 - month * 0.02, 0.2, 0.1],
    now: month === 10,
    mark: `data-month="${month + 1}"`,
  }));

  it('is drawn as committed: four parts by four fills, and in figures', () => {
    const svg = makeUpBars(['Silvers', 'Carp', 'Barbel', 'F1s'], bars, 'make-up');
    expectWellFormed(svg);
    for (const fill of ['p0', 'p1', 'p2', 'p3']) expect(svg.match(new RegExp(`part ${fill}"`, 'g'))).toHaveLength(12);
    compareDrawing('make-up-bars', svg);
  });

  it('stacks to the full height', () => {
    const svg = makeUpBars(['Silvers', 'Carp'], [{ letter: 'J', shares: [0.25, 0.75], now: false }], 'x');
    const boxes = [...svg.matchAll(/y="([\d.]+)" width="19" height="([\d.]+)"/g)].map(([, y, height]) => [
      Number(y),
      Number(height),
    ]);
    expect(boxes).toEqual([
      [73, 23],
      [4, 69],
    ]);
  });
});

describe('the year on the gauge', () => {
  const points = Array.from({ length: 40 }, (_, week) => ({
    dayOfYear: week * 7 + (week >= 20 ? 70 : 3),
    level: week % 9 === 0 ? null : 0.05 * Math.sin(week / 7),
    degreesC: 12 - 8 * Math.cos((week / 52) * 2 * Math.PI),
  }));

  it('is drawn as committed, and never joins readings across a long gap', () => {
    const svg = levelAndTemperature(
      [
        { year: 2025, points },
        { year: 2026, points: points.slice(0, 30) },
      ],
      'm',
      'gauge',
    );
    expectWellFormed(svg);
    const lines = [...svg.matchAll(/class="(?:latest|earlier)" d="([^"]+)"/g)].map(([, d]) => d!.match(/M/g)!.length);
    expect(lines).toEqual([2, 2, 2, 2]);
    compareDrawing('level-and-temperature', svg);
  });

  it('says so where a quantity was never read', () => {
    const svg = levelAndTemperature([{ year: 2026, points: [{ dayOfYear: 5, level: 0.1, degreesC: null }] }], 'm', 'x');
    expect(svg.match(/>no readings</g)).toHaveLength(1);
    expectWellFormed(svg);
  });
});

describe('the calibration picture', () => {
  it('is drawn as committed', () => {
    const points = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9].map((stated) => ({ stated, happened: stated ** 1.2 }));
    const svg = calibration(points, 'calibration');
    expectWellFormed(svg);
    compareDrawing('calibration', svg);
  });

  it('puts a forecast that means what it says on the slanting line', () => {
    const svg = calibration([{ stated: 0.5, happened: 0.5 }], 'x');
    expect(svg).toContain('cx="144" cy="108"');
  });
});
