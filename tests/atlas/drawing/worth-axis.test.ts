import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { worthAxis } from '../../../src/atlas/drawing/worth-axis.ts';
import { compareDrawing, expectWellFormed } from './compare-drawing.ts';

describe('the axis of a worth', () => {
  it('draws a fair worth as it is committed', () => {
    const svg = worthAxis([{ shown: { value: 0.82, low: 0.66, high: 1.02, evidence: 'fair' } }]);
    expect(svg).toContain('aria-hidden="true"');
    compareDrawing('worth-axis-fair', svg);
  });

  it('ends a whisker that leaves the axis in an arrow head, and draws thin evidence as thin', () => {
    const svg = worthAxis([{ shown: { value: 1.4, low: 0.3, high: 3.2, evidence: 'thin' } }]);
    expect(svg).toContain('<g class="thin">');
    compareDrawing('worth-axis-thin-and-wide', svg);
  });

  it('takes the worth of many months, each to be found by its mark', () => {
    const shown = { value: 1.1, low: 0.9, high: 1.3, evidence: 'solid' as const };
    const svg = worthAxis([10, 11].map((month) => ({ shown, className: 'of-month', mark: `data-month="${month}"` })));
    expect(svg.match(/<circle /g)).toHaveLength(2);
    expect(svg.match(/class="par"/g)).toHaveLength(1);
    expect(svg).toContain('<g class="solid of-month" data-month="11">');
  });

  it('is well formed for every worth there can be', () => {
    const ratio = fc.double({ min: 1e-6, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(ratio, ratio, ratio, (value, low, high) => {
        expectWellFormed(worthAxis([{ shown: { value, low, high, evidence: 'solid' } }]));
      }),
    );
  });
});
