import { JSON_FORMAT } from '../atlas/peg-data.ts';
import type { BagTables, Ratings } from '../ratings/ratings.ts';

/**
 * The document that `ratings --json` prints for one bag. Its keys are a published format, of which `format` is the number
 * (1 had none, and called worth a return): model, featureMonths, pegs, pegMonths, framing, waterLevels, backtest, besides, dnw,
 * fits. Framing has a row for each water and month that saw a match.
 */
export function ratingsJson(ratings: Ratings, tables: BagTables) {
  return {
    format: JSON_FORMAT,
    model: tables.model,
    featureMonths: tables.featureMonths,
    pegs: tables.pegs,
    pegMonths: tables.pegMonths,
    framing: ratings.framing
      .filter(({ events }) => events > 0)
      .map(({ water, month, events, mostlyFrom, frameKg, winKg }) => ({
        water,
        month,
        events,
        mostlyFrom,
        frameKg,
        winKg,
      })),
    waterLevels: ratings.waterLevels,
    backtest: ratings.backtest ?? { events: 0, sessions: 0, scores: [], calibration: [], parts: [], besides: [] },
    besides: ratings.besides,
    dnw: ratings.dnwLesson,
    fits: ratings.fits,
  };
}
