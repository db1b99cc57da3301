import { MONTHS, type Month, monthName, monthOf, yearOf } from '../domain/day.ts';
import { METRES_PER_FOOT } from '../domain/length.ts';
import type { GaugeReading, VenueSettings } from '../domain/venue.ts';
import type { FramingMakeUp, FramingMonth } from '../ratings/ratings.ts';
import { inEnglish } from '../words/say.ts';
import type { Atlas } from './atlas.ts';
import { aimWords, makeUpWords } from './bag-plan.ts';
import { type FramingWeight, framingYear } from './drawing/framing-year.ts';
import { type GaugeYear, levelAndTemperature } from './drawing/level-and-temperature.ts';
import { makeUpBars } from './drawing/make-up-bars.ts';
import { MONTH_LETTERS } from './drawing/month-letters.ts';
import { amountIn, expectedWhole } from './expected-weight.ts';

/** The year of one water: what frames and wins, what framing bags are made of, and how it stands and warms. */
export interface WaterYear {
  readonly nowMonth: Month;
  /** One month each: "To frame 24 lb …", "Framing bags in November: …"; empty where nothing is known. */
  readonly months: readonly { readonly month: Month; readonly name: string; readonly words: readonly string[] }[];
  /** Null where no event says. */
  readonly framing: string | null;
  readonly makeUp: string | null;
  readonly gauge: string | null;
  /** "The latest year, 2026, is drawn heavy". */
  readonly gaugeWords: string;
}

const MILLISECONDS_PER_DAY = 86_400_000;

/** Puts the year of a water together. */
export function waterYear(atlas: Atlas, water: string): WaterYear {
  const { ratings, venue } = atlas;
  const { settings } = venue;
  const nowMonth = monthOf(settings.guideDay);
  const framing = ratings.framing.filter((row) => row.water === water && row.frameKg !== null);
  const makeUps = ratings.framingMakeUp.filter((row) => row.water === water && row.bags > 0);
  const readings = venue.gauge.filter((reading) => reading.water === water);
  const years = gaugeYears(readings, settings);
  const months = MONTHS.map((month) => {
    const inMonth = (row: { readonly month: Month }) => row.month === month;
    const words = [
      aimWords(framing.find(inMonth), settings.units.weight, inEnglish),
      makeUpWords(makeUps.find(inMonth), settings.bagParts, inEnglish),
    ].filter((sentence) => sentence !== null);
    return { month, name: monthName(month), words };
  });
  return {
    nowMonth,
    months,
    framing: framing.length === 0 ? null : framingDrawing(framing, nowMonth, settings),
    makeUp: makeUps.length === 0 ? null : makeUpDrawing(makeUps, nowMonth, settings),
    gauge: years.length === 0 ? null : gaugeDrawing(years, settings),
    gaugeWords: years.length < 2 ? '' : `The latest year, ${years.at(-1)!.year}, is drawn heavy, earlier ones fine.`,
  };
}

function framingDrawing(rows: readonly FramingMonth[], nowMonth: Month, { units }: VenueSettings): string {
  const weight = (middle: number | null, low: number | null, high: number | null): FramingWeight | null => {
    if (middle === null) return null;
    return {
      middle: amountIn(middle, units.weight),
      low: amountIn(low ?? middle, units.weight),
      high: amountIn(high ?? middle, units.weight),
      words: expectedWhole(middle, units.weight),
    };
  };
  const months = MONTHS.map((month) => {
    const row = rows.find((candidate) => candidate.month === month);
    if (row === undefined) return { frame: null, win: null };
    return {
      frame: weight(row.frameKg, row.frameLowKg, row.frameHighKg),
      win: weight(row.winKg, row.winLowKg, row.winHighKg),
    };
  });
  const told = rows.map((row) => aimWords(row, units.weight, inEnglish));
  return framingYear(months, nowMonth, units.weight, `Weight to frame and to win by month. ${told.join(' ')}`);
}

function makeUpDrawing(rows: readonly FramingMakeUp[], nowMonth: Month, { bagParts }: VenueSettings): string {
  const parts = bagParts.filter(({ id }) => rows.some(({ shares }) => shares.some(({ part }) => part === id)));
  const bars = MONTHS.map((month) => {
    const row = rows.find((candidate) => candidate.month === month);
    const shares = parts.map(({ id }) => row?.shares.find(({ part }) => part === id)?.share ?? 0);
    return {
      letter: MONTH_LETTERS.charAt(month - 1),
      shares: row === undefined ? null : shares,
      now: month === nowMonth,
      mark: `data-month="${month}"`,
    };
  });
  const told = rows.map((row) => makeUpWords(row, bagParts, inEnglish));
  return makeUpBars(
    parts.map(({ name }) => name),
    bars,
    told.join(' '),
  );
}

/** Readings by year, the latest three, in order of time. */
function gaugeYears(readings: readonly GaugeReading[], { units }: VenueSettings): readonly GaugeYear[] {
  const unitMetres = units.length === 'm' ? 1 : METRES_PER_FOOT;
  const byYear = Map.groupBy(
    [...readings].sort((a, b) => a.day.localeCompare(b.day)),
    ({ day }) => yearOf(day),
  );
  return [...byYear]
    .map(([year, ofYear]) => ({
      year,
      points: ofYear.map(({ day, levelMetres, waterDegreesC }) => ({
        dayOfYear: (Date.parse(`${day}T00:00:00Z`) - Date.parse(`${year}-01-01T00:00:00Z`)) / MILLISECONDS_PER_DAY + 1,
        level: levelMetres === undefined ? null : levelMetres / unitMetres,
        degreesC: waterDegreesC ?? null,
      })),
    }))
    .slice(-3);
}

function gaugeDrawing(years: readonly GaugeYear[], { units }: VenueSettings): string {
  const range = (values: readonly (number | null)[], decimals: number) => {
    const known = values.filter((value) => value !== null);
    return known.length === 0
      ? 'not read'
      : `${Math.min(...known).toFixed(decimals)} to ${Math.max(...known).toFixed(decimals)}`;
  };
  const told = years.map(
    ({ year, points }) =>
      `${year}: level ${range(
        points.map(({ level }) => level),
        2,
      )} ${units.length} above datum, water ${range(
        points.map(({ degreesC }) => degreesC),
        1,
      )} °C`,
  );
  return levelAndTemperature(years, units.length, `Level and water temperature through the year. ${told.join('; ')}.`);
}
