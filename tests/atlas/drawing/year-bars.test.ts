import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { yearBars } from '../../../src/atlas/drawing/year-bars.ts';
import { compareDrawing, expectWellFormed } from './compare-drawing.ts';
import { EXAMPLE_YEAR } from './example-worth.ts';

const groupOf = (svg: string, month: number) =>
  new RegExp(`<g class="([^"]*)" data-month="${month}"[^>]*>(.*?)</g>`).exec(svg);

describe('a year of worth', () => {
  it('is drawn as it is committed', () => compareDrawing('year-bars', yearBars(EXAMPLE_YEAR, 11, 'a year')));

  it('marks the present month and no other, each month by its number', () => {
    const svg = yearBars(EXAMPLE_YEAR, 11, 'a year');
    expect(svg.match(/ now"/g)).toHaveLength(1);
    expect(groupOf(svg, 11)?.[1]).toBe('bar fair now');
  });

  it('carries the evidence in the class and prints the figure', () => {
    const august = groupOf(yearBars(EXAMPLE_YEAR, 11, 'a year'), 8);
    expect(august?.[1]).toBe('bar solid');
    expect(august?.[2]).toContain('>1.41</text>');
  });

  it('leaves a gap with a dash for a month nothing is known of', () => {
    const february = groupOf(yearBars(EXAMPLE_YEAR, 11, 'a year'), 2)?.[2];
    expect(february).toContain('>–</text>');
    expect(february).not.toContain('<rect');
  });

  it('stands above par for more and below for less', () => {
    const top = (ratio: number) => {
      const svg = yearBars([{ value: ratio, low: ratio, high: ratio, evidence: 'solid' }], 1, 'one');
      const [, y, height] = /y="([\d.]+)" width="17" height="([\d.]+)"/.exec(svg)!.map(Number);
      return { top: y!, bottom: y! + height! };
    };
    expect(top(1.5).bottom).toBeCloseTo(46, 1);
    expect(top(0.6).top).toBeCloseTo(46, 1);
    // Even for equal ratios: half as tall below as twice is above.
    // To the whole unit that bars are drawn in.
    expect(Math.abs(46 - top(1.5).top - (top(1 / 1.5).bottom - 46))).toBeLessThanOrEqual(1);
  });

  it('is well formed whatever the worth is', () => {
    const ratio = fc.double({ min: 1e-9, max: 1e9, noNaN: true });
    const month = fc.option(
      fc.record({ value: ratio, low: ratio, high: ratio, evidence: fc.constant('thin' as const) }),
    );
    fc.assert(
      fc.property(fc.array(month, { maxLength: 12 }), (months) => expectWellFormed(yearBars(months, 3, 'x'))),
      {
        numRuns: 30,
      },
    );
  });
});
