import { addDays, type Day } from '../../../src/domain/day.ts';
import type { GaugeReading } from '../../../src/domain/venue.ts';
import type { Chance } from '../chance.ts';
import { rounded } from '../ground/spot.ts';
import type { Weather } from './weather.ts';

/** Weekly readings of one water's gauge board, some of them without a thermometer, a few weeks missed. */
export function readGauge(water: string, from: Day, to: Day, weather: Weather, chance: Chance): GaugeReading[] {
  const readings: GaugeReading[] = [];
  for (let day = from; day <= to; day = addDays(day, 7)) {
    if (chance.happens(0.06)) continue;
    const today = weather.on(day, water);
    readings.push({
      water,
      day,
      levelMetres: rounded(today.levelMetres + 0.01 * chance.normal(), 2),
      ...(chance.happens(0.9) ? { waterDegreesC: rounded(today.waterDegreesC + 0.3 * chance.normal(), 1) } : {}),
    });
  }
  return readings;
}
