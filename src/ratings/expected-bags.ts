import { MONTHS, type Month } from '../domain/day.ts';
import { pegKey } from '../domain/peg.ts';
import type { ToldBag } from './bag-model.ts';
import { chancesToFrame } from './chance-to-frame.ts';
import { chanceBelow, type DaySpread, valueAt } from './day-spread.ts';
import type { RatedVenue } from './rated-venue.ts';
import type { BagId, ExpectedBag, Quartiles } from './ratings.ts';
import { usualField } from './usual-field.ts';

/**
 * What a club-average rod may expect at every peg in every month, and its chance to frame. Empty where the log gives no
 * par, or holds no match to say how many fish and how many frame.
 * @param bags The total first, then the bag parts.
 */
export function expectedBags(venue: RatedVenue, bags: readonly ToldBag[], seed: number): ExpectedBag[] {
  const [total, ...parts] = bags.flatMap(predictions);
  if (total === undefined) return [];
  const { anglerSd, residualSd } = bags[0]!.outlook;
  const spread = Math.hypot(anglerSd, residualSd);
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
          chanceOfNone: chanceOfNone(part.bags[i]!, part.noneBelowKg),
        })),
        ...chance,
        evidence,
      },
    ];
  });
}

/** A bag yet to come, on the log scale, on a day that is like one of those before. */
interface LogBag {
  readonly mean: number;
  /** Of all but the day. */
  readonly sd: number;
  readonly days: DaySpread;
  /** Chance that there is any, where the mean is of what it weighs then; null where the bound of nothing tells. */
  readonly chanceOfAny: number | null;
}

interface Prediction {
  readonly bag: BagId;
  readonly noneBelowKg: number;
  /** Of each peg and month, in the order of the worth. */
  readonly bags: readonly LogBag[];
}

function predictions({ bag, outlook, pegMonths, days, presence }: ToldBag): Prediction[] {
  if (days.length === 0) return [];
  const levelOf = byWaterMonth(days);
  const thereOf = presence === null ? null : byWaterMonth(presence.days);
  const weights = presence?.weights ?? pegMonths;
  const bags = weights.map(({ water, month, logWorth, sd }, i): LogBag => {
    const level = levelOf(water, month);
    const here = {
      mean: level.mean + logWorth,
      sd: Math.hypot(level.sd, sd, outlook.residualSd),
      days: outlook.daySpread,
    };
    if (presence === null || thereOf === null) return { ...here, chanceOfAny: null };
    const there = thereOf(water, month);
    const peg = presence.pegMonths[i]!;
    const none = chanceBelow(presence.daySpread, there.mean + peg.logWorth, Math.hypot(1, there.sd, peg.sd), 0);
    return { ...here, chanceOfAny: 1 - none };
  });
  return [{ bag, noneBelowKg: outlook.noneBelowGrams / 1000, bags }];
}

function byWaterMonth(days: ToldBag['days']): (water: string, month: Month) => ToldBag['days'][number] {
  const levels = new Map(days.map((level) => [`${level.water} ${level.month}`, level]));
  return (water, month) => levels.get(`${water} ${month}`)!;
}

function chanceOfNone({ mean, sd, days, chanceOfAny }: LogBag, noneBelowKg: number): number {
  return chanceOfAny === null ? chanceBelow(days, mean, sd, Math.log(noneBelowKg)) : 1 - chanceOfAny;
}

/** Quarters of a bag; what is too little to be weighed is nothing, and so is the share that has none. */
function quartiles({ mean, sd, days, chanceOfAny }: LogBag, noneBelowKg: number): Quartiles {
  const at = (probability: number) => {
    if (chanceOfAny !== null) {
      const ofSome = (probability - (1 - chanceOfAny)) / chanceOfAny;
      return ofSome > 0 ? Math.exp(valueAt(days, mean, sd, ofSome)) : 0;
    }
    const kilograms = Math.exp(valueAt(days, mean, sd, probability));
    return kilograms < noneBelowKg ? 0 : kilograms;
  };
  return { lowKg: at(0.25), middleKg: at(0.5), highKg: at(0.75) };
}

function framingChances(
  venue: RatedVenue,
  pegMonths: ToldBag['pegMonths'],
  spread: number,
  seed: number,
): ReadonlyMap<string, Pick<ExpectedBag, 'chanceToFrame' | 'chanceByDraw'>> {
  const byWaterMonth = Map.groupBy(pegMonths, ({ water, month }) => `${water} ${month}`);
  const chances = new Map<string, Pick<ExpectedBag, 'chanceToFrame' | 'chanceByDraw'>>();
  venue.waters.forEach(({ id }, index) => {
    const field = usualField(venue, id);
    if (field === null) return;
    const months = MONTHS.map((month) => byWaterMonth.get(`${id} ${month}`) ?? []);
    chancesToFrame(months, field, spread, seed + index).forEach((toFrame, at) => {
      const pegs = months[at]!;
      pegs.forEach(({ water, peg, month }, i) => {
        chances.set(`${pegKey(water, peg)} ${month}`, {
          chanceToFrame: toFrame[i]!,
          chanceByDraw: Math.min(1, field.places / Math.min(field.anglers, pegs.length)),
        });
      });
    });
  });
  return chances;
}
