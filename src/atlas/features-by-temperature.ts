import { formatDay } from '../domain/day.ts';
import type { FeatureTemperature } from '../ratings/ratings.ts';
import type { Atlas } from './atlas.ts';
import { worthBars } from './drawing/worth-bars.ts';
import { worthWords } from './worth-words.ts';

const BAND_DEGREES = 2;

/** Worth of the features by water temperature, with what the back-test says of that way of reading the year. */
export interface FeatureTemperatures {
  readonly features: readonly { readonly id: string; readonly name: string; readonly drawing: string }[];
  /** "Kiln Pool stood at 7.4 °C on 20 Nov 2026" for each water that is read; empty without a reading. */
  readonly readings: readonly string[];
  /** Whether month or temperature forecasts better here; says so where it is not known. */
  readonly verdict: string;
}

/** Null where no event logs a water temperature. */
export function featureTemperatures(atlas: Atlas): FeatureTemperatures | null {
  const byFeature = Map.groupBy(atlas.ratings.featureTemperatures, ({ feature }) => feature);
  if (byFeature.size === 0) return null;
  const readings = latestReadings(atlas);
  const bandsNow = new Set(readings.map(({ degreesC }) => Math.floor(degreesC / BAND_DEGREES) * BAND_DEGREES));
  return {
    features: atlas.venue.settings.features
      .filter(({ id }) => byFeature.has(id))
      .map(({ id, name }) => ({ id, name, drawing: drawingOf(name, byFeature.get(id) ?? [], bandsNow) })),
    readings: readings.map(({ words }) => words),
    verdict: verdictWords(atlas),
  };
}

function drawingOf(name: string, rows: readonly FeatureTemperature[], bandsNow: ReadonlySet<number>): string {
  const bars = [...rows]
    .sort((a, b) => a.fromDegreesC - b.fromDegreesC)
    .map((row) => {
      const value = Math.exp(row.logWorth);
      return {
        letter: String(row.fromDegreesC),
        name: `${row.fromDegreesC} to ${row.fromDegreesC + BAND_DEGREES} °C`,
        shown: { value, low: row.low80, high: row.high80, evidence: row.evidence },
        now: bandsNow.has(row.fromDegreesC),
        words: worthWords({ value, low: row.low80, high: row.high80, evidence: row.evidence }, row.sessions),
      };
    });
  const told = bars.map((bar) => `${bar.name} ${bar.words.middle} (${bar.words.low} to ${bar.words.high})`);
  return worthBars(bars, `${name} by water temperature, in multiples of par: ${told.join(', ')}.`, 'temperature-bars');
}

function latestReadings(atlas: Atlas): readonly { readonly degreesC: number; readonly words: string }[] {
  return atlas.venue.waters.flatMap(({ id, name }) => {
    const read = atlas.venue.gauge.filter(({ water, waterDegreesC }) => water === id && waterDegreesC !== undefined);
    const latest = read.reduce<(typeof read)[number] | undefined>(
      (last, reading) => (last === undefined || reading.day > last.day ? reading : last),
      undefined,
    );
    if (latest?.waterDegreesC === undefined) return [];
    const degreesC = latest.waterDegreesC;
    return [{ degreesC, words: `${name} stood at ${degreesC.toFixed(1)} °C on ${formatDay(latest.day)}` }];
  });
}

function verdictWords(atlas: Atlas): string {
  const scores = atlas.ratings.backtest?.scores ?? [];
  const byMonth = scores.find(({ name }) => name === 'model');
  const byTemperature = scores.find(({ name }) => name === 'model-by-temperature');
  if (byMonth === undefined || byTemperature === undefined) {
    return 'Which of the two forecasts better here is not known: no earlier year to test it on.';
  }
  const [month, temperature] = [byMonth.rootMeanSquareError, byTemperature.rootMeanSquareError];
  const figures = `error ${month.toFixed(3)} by month, ${temperature.toFixed(3)} by temperature, on the log scale`;
  if (Math.abs(month - temperature) < 0.005) return `Last year neither forecast better than the other (${figures}).`;
  return `Last year ${month < temperature ? 'the month' : 'the water temperature'} forecast better (${figures}).`;
}
