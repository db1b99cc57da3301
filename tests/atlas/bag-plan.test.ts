import { describe, expect, it } from 'vitest';
import { aimWords, bagPlan } from '../../src/atlas/bag-plan.ts';
import type { ExpectedBag, FramingMonth } from '../../src/ratings/ratings.ts';
import { inEnglish } from '../../src/words/say.ts';
import { exampleAtlas } from './example-atlas.ts';

const kilograms = (pounds: number) => pounds * 0.45359237;
const quartiles = (low: number, middle: number, high: number) => ({
  lowKg: kilograms(low),
  middleKg: kilograms(middle),
  highKg: kilograms(high),
});

const bag: ExpectedBag = {
  water: 'pit',
  peg: '1',
  month: 11,
  total: quartiles(16.3, 27.6, 44.8),
  parts: [
    { part: 'silvers', bag: quartiles(7.3, 11.1, 16), chanceOfNone: 0.004 },
    { part: 'carp', bag: quartiles(0, 14.5, 31.4), chanceOfNone: 0.31 },
  ],
  chanceToFrame: 0.16,
  chanceByDraw: 0.25,
  evidence: 'fair',
};

const framing: FramingMonth = {
  water: 'pit',
  month: 11,
  events: 4,
  mostlyFrom: null,
  frameKg: kilograms(41),
  frameLowKg: kilograms(34),
  frameHighKg: kilograms(52),
  winKg: kilograms(58),
  winLowKg: kilograms(50),
  winHighKg: kilograms(70),
};

const planOf = (changes: Partial<ExpectedBag> = {}, framingRows: readonly FramingMonth[] = [framing]) =>
  bagPlan(
    exampleAtlas({
      ratings: {
        expectedBags: [{ ...bag, ...changes }],
        framing: framingRows,
        framingMakeUp: [
          {
            water: 'pit',
            month: 11,
            bags: 12,
            shares: [
              { part: 'silvers', share: 0.38 },
              { part: 'carp', share: 0.62 },
            ],
          },
        ],
      },
    }),
    'pit/1',
  )?.months[0];

describe('the bag plan', () => {
  it('gives each part of the bag and the total with both quarters', () => {
    expect(planOf()?.rows).toEqual([
      { name: 'Total', low: '16 lb 8 oz', middle: '28 lb', middleOther: '12.5 kg', high: '45 lb' },
      { name: 'Silvers', low: '7 lb 8 oz', middle: '11 lb', middleOther: '5 kg', high: '16 lb' },
      { name: 'Carp', low: '0', middle: '14 lb 8 oz', middleOther: '6.6 kg', high: '31 lb' },
    ]);
  });

  it('holds the chance to frame against the lottery, in plain words', () => {
    expect(planOf()?.chance).toBe('An average angler frames from here once in 6; from any peg, once in 4.');
    expect(planOf({ chanceToFrame: 0.68 })?.chance).toBe(
      'An average angler frames from here 7 times in 10; from any peg, once in 4.',
    );
    expect(planOf({ chanceToFrame: 0.24 })?.chance).toBe(
      'An average angler frames from here once in 4, as from any peg.',
    );
  });

  it('says the chance of no carp, and keeps quiet of what hardly happens', () => {
    expect(planOf()?.without).toBe('3 sessions in 10: no carp.');
  });

  it('says what to aim at with its range, and what framing bags were made of', () => {
    expect(planOf()?.frame).toEqual({
      typical: '41 lb',
      typicalOther: '18.5 kg',
      rest: ' (34 lb to 52 lb); to win 58 lb (50 lb to 70 lb). From 4 matches.',
    });
    expect(aimWords(framing, 'lb', inEnglish)).toBe(
      'November: to frame 41 lb (34 lb to 52 lb); to win 58 lb (50 lb to 70 lb). From 4 matches.',
    );
    const since = (mostlyFrom: FramingMonth['mostlyFrom']) => aimWords({ ...framing, mostlyFrom }, 'lb', inEnglish);
    expect(since({ day: '2025-03-01', events: 2, levelThen: null })).toContain(
      'From 4 matches; 2 of them, from 1 Mar 2025 on, count most, since this water fished otherwise before.',
    );
    expect(since({ day: '2023-03-01', events: 4, levelThen: 0.6 })).toContain(
      'From 4 matches; all from when this water fished at 0.60 of what it does now.',
    );
    expect(planOf()?.makeUp).toBe('Framing bags in November: 62% carp, 38% silvers (12 bags logged by parts).');
  });

  it('has no aim where no event of the month says', () => {
    expect(planOf({}, [])?.frame).toBeNull();
  });

  it('is nothing at a peg without an expectation', () => {
    expect(bagPlan(exampleAtlas(), 'pit/1')).toBeNull();
  });
});
