import { monthOf } from '../../../src/domain/day.ts';
import { type Peg, pegKey } from '../../../src/domain/peg.ts';
import type { FishingEvent, Session } from '../../../src/domain/session.ts';
import type { Chance } from '../chance.ts';
import { drawAnglers } from './anglers.ts';
import { type CalendarPlan, planEvents } from './calendar.ts';
import { fishEvent, type SheetHabits } from './draw-up.ts';
import { FEATURE_YEARS } from './feature-year.ts';
import { pegSum, type Truth } from './truth.ts';
import type { Weather } from './weather.ts';

/** Standard deviations of the true effects, on the log scale, beside those of the features' years. */
export interface LogSpread {
  /** Of what the season and the water do not explain of a day. */
  readonly event: number;
  readonly angler: number;
  readonly peg: number;
  readonly residual: number;
}

export interface LogOptions {
  readonly calendar: CalendarPlan;
  readonly anglers: number;
  readonly spread: LogSpread;
  readonly habits: SheetHabits;
}

/** A day's middling bag: about 3 kg in 5 °C water and 11 kg in 20 °C. */
const MEAN_LOG_KILOGRAMS = 1.8;
const PER_DEGREE = 0.088;
const MIDDLE_DEGREES = 13;

/** Below this the water is about to skin over and next to nothing feeds: bags of ounces, and now and then a blank. */
const STARVED_DEGREES = 3.6;
const STARVED_EFFECT = -4.1;

/** Fishes a venue for some years and keeps what the bags were drawn from. */
export function makeLog(
  pegs: readonly Peg[],
  options: LogOptions,
  weather: Weather,
  chance: Chance,
): { readonly events: FishingEvent[]; readonly sessions: Session[]; readonly truth: Truth } {
  const pegChance = chance.apart('pegs');
  const dayChance = chance.apart('days');
  const anglers = drawAnglers(options.anglers, options.spread.angler, chance.apart('anglers'));
  const eventEffects: Record<string, number> = {};
  const truth: Truth = {
    mean: MEAN_LOG_KILOGRAMS,
    events: eventEffects,
    anglers: Object.fromEntries(anglers.map((angler) => [angler.ref, angler.effect])),
    pegs: Object.fromEntries(pegs.map((peg) => [pegKey(peg.water, peg.peg), options.spread.peg * pegChance.normal()])),
    features: Object.fromEntries(Object.entries(FEATURE_YEARS).map(([feature, year]) => [feature, year.level])),
    featureMonths: Object.fromEntries(Object.entries(FEATURE_YEARS).map(([feature, year]) => [feature, year.months])),
    residualSd: options.spread.residual,
  };
  const pegsByWater = Map.groupBy(pegs, (peg) => peg.water);
  const events: FishingEvent[] = [];
  const sessions: Session[] = [];
  const fishing = chance.apart('fishing');
  for (const planned of planEvents(options.calendar, chance.apart('calendar'))) {
    const id = `${planned.day}-${planned.water}`;
    const today = weather.on(planned.day, planned.water);
    const effect = seasonEffect(today.waterDegreesC) + options.spread.event * dayChance.normal();
    eventEffects[id] = effect;
    const month = monthOf(planned.day);
    const day = {
      mean: truth.mean,
      event: effect,
      residualSd: truth.residualSd,
      pegSum: (peg: Peg) => pegSum(truth, peg, month),
    };
    const fished = fishEvent(
      id,
      planned,
      pegsByWater.get(planned.water) ?? [],
      anglers,
      day,
      today,
      options.habits,
      fishing,
    );
    events.push(fished.event);
    sessions.push(...fished.sessions);
  }
  return { events, sessions, truth };
}

/** What the temperature of the water does to a whole day. */
function seasonEffect(waterDegreesC: number): number {
  return PER_DEGREE * (waterDegreesC - MIDDLE_DEGREES) + (waterDegreesC < STARVED_DEGREES ? STARVED_EFFECT : 0);
}
