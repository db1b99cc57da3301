import { describe, expect, it } from 'vitest';
import { contrastRatio } from '../styles/contrast-ratio.ts';
import { palettes } from '../styles/stylesheet.ts';

/**
 * Contrast of the site's ink by the formula of WCAG 2.2 (W3C Recommendation, 5 October 2023, "relative luminance" and
 * "contrast ratio"): text needs 4.5:1 (success criterion 1.4.3), what a drawing says 3:1 (1.4.11).
 */
const schemes = palettes().map(({ name, colours }) => ({ name, ink: colours }));

describe('the contrast formula', () => {
  // White on black is 21:1 by definition; #767676 is the lightest grey that passes 4.5:1 on white (W3C, F24 and others).
  it('gives the published values', () => {
    expect(contrastRatio('#000000', '#ffffff')).toBeCloseTo(21, 10);
    expect(contrastRatio('#767676', '#ffffff')).toBeGreaterThan(4.5);
    expect(contrastRatio('#777777', '#ffffff')).toBeLessThan(4.5);
  });
});

describe.each(schemes)('the $name scheme', ({ ink }) => {
  const on = (front: string, back: string) => contrastRatio(ink.get(front)!, ink.get(back)!);

  it.each([
    ['ink', 'paper'],
    ['soft', 'paper'],
    ['reed', 'paper'],
    ['ink', 'water'],
    ['ink', 'earth'],
  ])('sets %s on %s legibly', (front, back) => expect(on(front, back)).toBeGreaterThanOrEqual(4.5));

  it.each([
    ['deep', 'paper'],
    ['reed', 'paper'],
  ])('draws %s on %s so that it can be told apart', (front, back) => expect(on(front, back)).toBeGreaterThanOrEqual(3));
});

describe('safety signs', () => {
  it('stand out: black on yellow, white on green', () => {
    expect(contrastRatio('#141414', '#fac800')).toBeGreaterThan(7);
    expect(contrastRatio('#ffffff', '#237f52')).toBeGreaterThan(4.5);
  });
});
