import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { returnAxis } from '../../../src/atlas/drawing/return-axis.ts';
import { compareDrawing, expectWellFormed } from './compare-drawing.ts';

describe('the axis of a return', () => {
  it('draws a fair return as it is committed', () => {
    const svg = returnAxis({ value: 0.82, low: 0.66, high: 1.02, evidence: 'fair' });
    expect(svg).toContain('aria-hidden="true"');
    compareDrawing('return-axis-fair', svg);
  });

  it('ends a whisker that leaves the axis in an arrow head, and draws thin evidence as thin', () => {
    const svg = returnAxis({ value: 1.4, low: 0.3, high: 3.2, evidence: 'thin' });
    expect(svg).toContain('<g class="thin">');
    compareDrawing('return-axis-thin-and-wide', svg);
  });

  it('is well formed for every return there can be', () => {
    const ratio = fc.double({ min: 1e-6, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(ratio, ratio, ratio, (value, low, high) => {
        expectWellFormed(returnAxis({ value, low, high, evidence: 'solid' }));
      }),
    );
  });
});
