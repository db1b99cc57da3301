import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatLength } from '../../src/domain/length.ts';
import {
  bareWeightInOther,
  contourInOther,
  lengthsInOther,
  shortDepthInOther,
  weightsInOther,
} from '../../src/domain/unit-words.ts';
import { formatWeight } from '../../src/domain/weight.ts';

// The pound is 0.45359237 kg and the foot 0.3048 m exactly (International yard and pound agreement of 1959; Weights and
// Measures Act 1985, schedule 1); the figures below were worked out from these by hand.
describe('figures told in the other unit', () => {
  it.each([
    ['23 lb 8 oz', '10.7 kg'],
    ['34 lb (16 lb to 52 lb); to win 42 lb. From 1 match.', '15.4 kg (7.3 kg to 24 kg); to win 19.1 kg. From 1 match.'],
    ['9 oz', '260 g'],
    ['1 oz', '30 g'],
    ['6 sessions in 10: no carp', '6 sessions in 10: no carp'],
  ])('%s is %s', (pounds, kilograms) => {
    expect(weightsInOther(pounds, 'lb')).toBe(kilograms);
  });

  it.each([
    ['10.66 kg', '24 lb'],
    ['2.1 kg', '4 lb 12 oz'],
    ['15 kg', '33 lb'],
    ['250 g', '9 oz'],
  ])('%s is %s', (kilograms, pounds) => {
    expect(weightsInOther(kilograms, 'kg')).toBe(pounds);
  });

  it('keeps every ounce of what was weighed', () => {
    expect(weightsInOther('23 lb 8 oz', 'lb', true)).toBe('10.66 kg');
    expect(weightsInOther('10.66 kg', 'kg', true)).toBe('23 lb 8 oz');
    expect(weightsInOther('45 g', 'kg', true)).toBe('2 oz');
  });

  it('tells lengths and short depths, and leaves what is none', () => {
    expect(lengthsInOther('2.89 m deep', 'm')).toBe('9 ft 6 in deep');
    expect(lengthsInOther('9 ft 6 in deep', 'ft')).toBe('2.90 m deep');
    expect(lengthsInOther('6 sessions in 10, 4 in 10', 'ft')).toBe('6 sessions in 10, 4 in 10');
    expect(lengthsInOther('209 m, straight ahead; 75 mm over', 'm')).toBe('686 ft, straight ahead; 3 in over');
    expect(lengthsInOther('686 ft, straight ahead; 3 in over', 'ft')).toBe('209 m, straight ahead; 75 mm over');
    expect(lengthsInOther('81,500 m³ (17,900,000 gallons)', 'm')).toBe('81,500 m³ (17,900,000 gallons)');
    expect(
      ['1 m', '1.5 m', '5 ft', '×2'].map((words) => contourInOther(words, words.endsWith('ft') ? 'ft' : 'm')),
    ).toEqual(['3.3 ft', '4.9 ft', '1.5 m', null]);
    expect(shortDepthInOther('2.05', 'm')).toBe('6′9″');
    expect(shortDepthInOther('6′9″', 'ft')).toBe('2.06');
    expect(shortDepthInOther('9″', 'ft')).toBe('0.23');
    expect([shortDepthInOther('not plumbed', 'm'), shortDepthInOther('11', 'm')]).toEqual([null, null]);
    expect([bareWeightInOther('44', 'lb'), bareWeightInOther('20', 'kg'), bareWeightInOther('–', 'lb')]).toEqual([
      '20',
      '44',
      null,
    ]);
  });

  it('come back within half of the coarser unit, whatever they are', () => {
    fc.assert(
      fc.property(fc.integer({ min: 200, max: 200_000 }), (grams) => {
        const there = weightsInOther(formatWeight(grams, { weight: 'kg' }), 'kg', true);
        const back = Number(/^[\d.]+/.exec(weightsInOther(there, 'lb', true))![0]);
        expect(Math.abs(back * 1000 - grams)).toBeLessThanOrEqual(5 + 14.2 + 5.1);
      }),
    );
    fc.assert(
      fc.property(fc.integer({ min: 30, max: 900 }), (centimetres) => {
        const there = lengthsInOther(formatLength(centimetres / 100, { length: 'm' }), 'm');
        const back = Number(/^[\d.]+/.exec(lengthsInOther(there, 'ft'))![0]);
        expect(Math.abs(back * 100 - centimetres)).toBeLessThanOrEqual(1.8);
      }),
    );
  });
});
