import { MONTHS } from '../domain/day.ts';
import { pegKey } from '../domain/peg.ts';
import type { RatedBag } from './bag-model.ts';
import { chancesToFrame } from './chance-to-frame.ts';
import { normalCdf } from './engine/normal-cdf.ts';
import type { RatedVenue } from './rated-venue.ts';
import { TERM } from './rating-model.ts';
import type { BagId, ExpectedBag, Quartiles } from './ratings.ts';
import { usualField } from './usual-field.ts';

/** Φ⁻¹(0.75). */
const NORMAL_QUARTER = 0.6744897501960817;

/**
 * What a club-average rod may expect at every peg in every month, and its chance to frame. Empty where the log gives no
 * par, or holds no match to say how many fish and how many frame.
 * @param bags The total first, then the bag parts.
 */
export function expectedBags(venue: RatedVenue, bags: readonly RatedBag[], seed: number): ExpectedBag[] {
  const [total, ...parts] = bags.flatMap(predictions);
  if (total === undefined) return [];
  const { sd } = bags[0]!.fitted.fit;
  const spread = Math.hypot(sd[TERM.angler] ?? 0, bags[0]!.fitted.fit.residualSd);
  const chances = framingChances(venue, bags[0]!.pegMonths, spread, seed);
  return bags[0]!.pegMonths.flatMap(({ water, peg, month, evidence }, i): ExpectedBag[] => {
    const chance = chances.get(`${pegKey(water, peg)} ${month}`);
    if (chance === undefined) return [];
    return [
      {
        water,
        peg,
        month,
        total: quartiles(total.bags[i]!, total.noneBelowKg),
        parts: parts.map((part) => ({
          part: part.bag,
          bag: quartiles(part.bags[i]!, part.noneBelowKg),
          chanceOfNone: normalCdf((Math.log(part.noneBelowKg) - part.bags[i]!.mean) / part.bags[i]!.sd),
        })),
        ...chance,
        evidence,
      },
    ];
  });
}

/** A bag yet to come, on the log scale. */
interface LogBag {
  readonly mean: number;
  readonly sd: number;
}

interface Prediction {
  readonly bag: BagId;
  readonly noneBelowKg: number;
  /** Of each peg and month, in the order of the returns. */
  readonly bags: readonly LogBag[];
}

function predictions({ fitted, pegMonths, days }: RatedBag): Prediction[] {
  const levels = new Map(days.map((level) => [`${level.water} ${level.month}`, level]));
  if (levels.size === 0) return [];
  const bags = pegMonths.map(({ water, month, logReturn, sd }) => {
    const level = levels.get(`${water} ${month}`)!;
    return { mean: level.mean + logReturn, sd: Math.hypot(level.sd, sd, fitted.fit.residualSd) };
  });
  return [{ bag: fitted.bag, noneBelowKg: fitted.noneBelowGrams / 1000, bags }];
}

/** Quarters of a log-normal bag; what is too little to be weighed is nothing. */
function quartiles({ mean, sd }: LogBag, noneBelowKg: number): Quartiles {
  const at = (deviations: number) => {
    const kilograms = Math.exp(mean + deviations * sd);
    return kilograms < noneBelowKg ? 0 : kilograms;
  };
  return { lowKg: at(-NORMAL_QUARTER), middleKg: at(0), highKg: at(NORMAL_QUARTER) };
}

function framingChances(
  venue: RatedVenue,
  pegMonths: RatedBag['pegMonths'],
  spread: number,
  seed: number,
): ReadonlyMap<string, Pick<ExpectedBag, 'chanceToFrame' | 'chanceByDraw'>> {
  const byWaterMonth = Map.groupBy(pegMonths, ({ water, month }) => `${water} ${month}`);
  const chances = new Map<string, Pick<ExpectedBag, 'chanceToFrame' | 'chanceByDraw'>>();
  venue.waters.forEach(({ id }, index) => {
    const field = usualField(venue, id);
    if (field === null) return;
    for (const month of MONTHS) {
      const pegs = byWaterMonth.get(`${id} ${month}`) ?? [];
      // The months of a water share their luck, so that they differ by their returns alone.
      const toFrame = chancesToFrame(pegs, field, spread, seed + index);
      pegs.forEach(({ water, peg }, i) => {
        chances.set(`${pegKey(water, peg)} ${month}`, {
          chanceToFrame: toFrame[i]!,
          chanceByDraw: Math.min(1, field.places / Math.min(field.anglers, pegs.length)),
        });
      });
    }
  });
  return chances;
}
