import { describe, expect, it } from 'vitest';
import { amountRow, intervalRow } from '../../../src/atlas/drawing/interval-row.ts';
import { compareDrawing } from './compare-drawing.ts';

describe('a worth in a table row', () => {
  it('is drawn as it is committed and hidden from screen readers, since the cells say the numbers', () => {
    const svg = intervalRow({ value: 1.3, low: 1.1, high: 1.54, evidence: 'solid' });
    expect(svg).toContain('aria-hidden="true"');
    compareDrawing('interval-row', svg);
  });

  it('puts par at the same place in every row', () => {
    const par = (svg: string) => /class="par" d="([^"]+)"/.exec(svg)?.[1];
    const rows = [0.1, 1, 9].map((value) => intervalRow({ value, low: value / 2, high: value * 2, evidence: 'thin' }));
    expect(new Set(rows.map(par)).size).toBe(1);
    expect(par(rows[0]!)).toBeDefined();
  });
});

describe('an amount in a table row', () => {
  it('runs along an even scale without a par line', () => {
    const svg = amountRow({ value: 50, low: 40, high: 60 }, 0, 100);
    expect(svg).toContain('cx="60"');
    expect(svg).not.toContain('class="par"');
  });

  it('stays inside the drawing where the scale has no width', () => {
    expect(amountRow({ value: 5, low: 5, high: 5 }, 5, 5)).toContain('cx="6"');
  });
});
