import { describe, expect, it } from 'vitest';
import { GRAMS_PER_OUNCE } from '../log/bag-parts.ts';
import { csvText } from './csv-text.ts';
import { markdownFile } from './front-matter.ts';
import { compassPoint, metres, oneIn, poundsAndOunces, slopeText } from './quantities.ts';

describe('quantities as a club writes them', () => {
  it('writes weights in pounds and two figures of ounces', () => {
    expect(poundsAndOunces(23.5 * 16 * GRAMS_PER_OUNCE)).toBe('23-08');
    expect(poundsAndOunces(15 * GRAMS_PER_OUNCE)).toBe('0-15');
    expect(poundsAndOunces(16 * GRAMS_PER_OUNCE)).toBe('1-00');
  });

  it('writes lengths with their unit and nothing where there is no figure', () => {
    expect(metres(1.404)).toBe('1.4 m');
    expect(metres(undefined)).toBeUndefined();
  });

  it('writes slopes and gradients as 1 in so many', () => {
    expect(slopeText((Math.atan(0.5) * 180) / Math.PI)).toBe('1 in 2');
    expect(oneIn(0.05)).toBe('1 in 20');
  });

  it('writes a wind by its compass point', () => {
    expect(compassPoint(202.5)).toBe('SSW');
    expect(compassPoint(0)).toBe('N');
  });
});

describe('files as a club writes them', () => {
  it('quotes only the cells that need it', () => {
    expect(
      csvText(
        ['a', 'b'],
        [
          ['x, y', undefined],
          ['say "so"', 3],
        ],
      ),
    ).toBe('a,b\n"x, y",\n"say ""so""",3\n');
  });

  it('keeps a peg’s name a text, leaves out what is not known and breaks long records into lines', () => {
    const text = markdownFile({ peg: '23', where: undefined, limits: { pole: '11 m', cast: undefined } }, 'Deep.');
    expect(text).toBe('---\npeg: "23"\nlimits: { pole: 11 m }\n---\n\nDeep.\n');
  });
});
