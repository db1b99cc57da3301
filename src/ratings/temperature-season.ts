import { MONTHS, monthOf } from '../domain/day.ts';
import type { FishingEvent } from '../domain/session.ts';
import type { EffectPrior } from './engine/latent-model.ts';

/** What a feature's worth may change with: the month, or the temperature of the water. */
export interface Season {
  /** Places along it, from 0. */
  readonly positions: number;
  readonly prior: EffectPrior;
  /** Where an event stands; null where its sheet does not say. */
  readonly positionOf: (event: FishingEvent) => number | null;
  /** One wave around the year, cosine and sine, at each position; null where the season is no circle. */
  readonly waves: readonly (readonly [cosine: number, sine: number])[] | null;
  /** The same of what all waters' own seasons share. */
  readonly venueWaves: Season['waves'];
}

const YEAR_WAVES = MONTHS.map(
  (_, i) => [Math.cos((2 * Math.PI * i) / MONTHS.length), Math.sin((2 * Math.PI * i) / MONTHS.length)] as const,
);

/** The twelve months, closing into a year. */
export const MONTH_SEASON: Season = {
  positions: MONTHS.length,
  prior: { kind: 'cyclic-walk', positions: MONTHS.length },
  positionOf: (event) => monthOf(event.day) - 1,
  waves: YEAR_WAVES,
  venueWaves: YEAR_WAVES,
};

const BAND_DEGREES = 2;

/** Bands of water temperature, from the coldest logged to the warmest, along a line with two ends. */
export interface TemperatureSeason extends Season {
  /** Lower end of each band, in degrees Celsius. */
  readonly bandsFrom: readonly number[];
}

/** The bands of 2 °C that the events span; null where no event logs the water's temperature, or all lie in one band. */
export function temperatureSeason(events: readonly FishingEvent[]): TemperatureSeason | null {
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  for (const event of events) {
    const band = bandOf(event);
    if (band === null) continue;
    lowest = Math.min(lowest, band);
    highest = Math.max(highest, band);
  }
  const positions = highest - lowest + 1;
  if (!(positions >= 2)) return null;
  return {
    positions,
    prior: { kind: 'walk', positions },
    waves: null,
    venueWaves: null,
    bandsFrom: Array.from({ length: positions }, (_, i) => (lowest + i) * BAND_DEGREES),
    positionOf: (event) => {
      const band = bandOf(event);
      // A day colder or warmer than any before is taken at the nearest band that was seen.
      return band === null ? null : Math.min(Math.max(band - lowest, 0), positions - 1);
    },
  };
}

function bandOf(event: FishingEvent): number | null {
  const degrees = event.conditions.waterDegreesC;
  return degrees === undefined ? null : Math.floor(degrees / BAND_DEGREES);
}
