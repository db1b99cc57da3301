import { addDays, type Day, daysBetween } from '../../../src/domain/day.ts';
import type { Chance } from '../chance.ts';
import { rounded } from '../ground/spot.ts';

/** The weather of one day at the venue. */
export interface DayWeather {
  readonly airDegreesC: number;
  readonly waterDegreesC: number;
  readonly windFromDegrees: number;
  readonly windMetresPerSecond: number;
  readonly sky: string;
  /** Level of the waters above their datum: high in winter, low by the end of summer. */
  readonly levelMetres: number;
}

/** How one water answers to the weather. */
export interface WaterClimate {
  /** Degrees it lies above the venue's usual: deep water below, shallow water above. */
  readonly degreesOff: number;
  /** How far its level moves, against the venue's usual. */
  readonly levelShare: number;
}

/** Weather for every day of a span, as each water has it. */
export interface Weather {
  on(day: Day, water: string): DayWeather;
}

const SKIES: readonly (readonly [string, number])[] = [
  ['overcast', 5],
  ['broken cloud', 5],
  ['clear', 3],
  ['drizzle', 2],
  ['rain and wind', 1.5],
  ['mist, then sun', 1],
];

/** Draws a span of weather: a yearly wave with spells of warm, cold and wet that last about a week. */
export function drawWeather(
  from: Day,
  to: Day,
  climates: Readonly<Record<string, WaterClimate>>,
  chance: Chance,
): Weather {
  const days: DayWeather[] = [];
  let warmth = 0;
  let wetness = 0;
  let water = 7;
  let wind = 225;
  const count = daysBetween(from, to) + 1;
  for (let i = 0; i < count; i++) {
    const day = addDays(from, i);
    const yearShare = daysBetween(`${day.slice(0, 4)}-01-01`, day) / 365.25;
    // Water is coldest at the end of January; the air runs a fortnight ahead of it.
    const wave = -Math.cos(2 * Math.PI * (yearShare - 0.055));
    warmth = 0.86 * warmth + chance.normal() * 1.5;
    wetness = 0.93 * wetness + chance.normal() * 0.035;
    const air = 10.5 + 7 * wave + warmth;
    water += 0.14 * (12.3 + 7.8 * wave + 0.55 * warmth - water);
    wind = (wind + chance.normal() * 35 + 360) % 360;
    days.push({
      airDegreesC: rounded(air, 0),
      waterDegreesC: rounded(Math.max(1.5, water), 1),
      windFromDegrees: (Math.round(wind / 22.5) % 16) * 22.5,
      windMetresPerSecond: rounded(Math.max(0, 4 + 2.2 * chance.normal()), 1),
      sky: air < 3 && chance.happens(0.4) ? 'clear, frost at dawn' : chance.weighted(SKIES),
      levelMetres: rounded(0.05 - 0.11 * Math.sin(2 * Math.PI * (yearShare - 0.47)) + wetness, 2),
    });
  }
  return {
    on: (day, water) => {
      const found = days[daysBetween(from, day)];
      const climate = climates[water];
      if (found === undefined) throw new RangeError(`weather was drawn from ${from} to ${to}, not for ${day}`);
      if (climate === undefined) throw new RangeError(`no climate is known for ${water}`);
      return {
        ...found,
        waterDegreesC: rounded(Math.max(0.5, found.waterDegreesC + climate.degreesOff), 1),
        levelMetres: rounded(found.levelMetres * climate.levelShare, 2),
      };
    },
  };
}
