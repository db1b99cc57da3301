import { MONTHS, type Month, monthName } from '../domain/day.ts';
import type { Feature } from '../domain/venue.ts';
import type { BagId, FeatureMonth } from '../ratings/ratings.ts';
import type { Atlas } from './atlas.ts';
import { intervalRow } from './drawing/interval-row.ts';
import { yearBars } from './drawing/year-bars.ts';
import { type WorthWords, worthWords, yearSentence } from './worth-words.ts';

/** A feature's worth through the year. */
export interface FeatureYear {
  readonly id: string;
  readonly name: string;
  readonly meaning: string;
  /** January first; null where nothing is known. */
  readonly months: readonly { readonly month: Month; readonly name: string; readonly known: WorthWords | null }[];
  readonly drawing: string;
}

/** The features of one month, the highest worth first. */
export interface FeaturesOfMonth {
  readonly month: Month;
  readonly name: string;
  readonly rows: readonly {
    readonly id: string;
    readonly name: string;
    readonly known: WorthWords;
    readonly drawing: string;
  }[];
}

/** Features with their worth by month, as years and as months. */
export interface FeatureMonthsView {
  readonly years: readonly FeatureYear[];
  readonly months: readonly FeaturesOfMonth[];
  readonly nowMonth: Month;
}

/** Worth of the venue's features by month for one bag; `only` leaves in those of one water. Empty without a log. */
export function featureMonthsView(
  atlas: Atlas,
  bag: BagId,
  nowMonth: Month,
  only: (feature: Feature) => boolean = () => true,
): FeatureMonthsView {
  const rows = atlas.ratings.bags.find((tables) => tables.bag === bag)?.featureMonths ?? [];
  const byFeature = Map.groupBy(rows, ({ feature }) => feature);
  const years = atlas.venue.settings.features
    .filter((feature) => byFeature.has(feature.id) && only(feature))
    .map((feature) => featureYear(feature, byFeature.get(feature.id) ?? [], nowMonth));
  return { years, months: MONTHS.map((month) => featuresOfMonth(month, years)), nowMonth };
}

/** The features that some peg of a water has, with their worth over the whole venue. */
export function featureMonthsOfWater(atlas: Atlas, water: string, nowMonth: Month): FeatureMonthsView {
  const there = new Set(atlas.pegsByWater.get(water)?.flatMap((peg) => peg.features) ?? []);
  return featureMonthsView(atlas, 'total', nowMonth, ({ id }) => there.has(id));
}

function featureYear({ id, name, meaning }: Feature, rows: readonly FeatureMonth[], nowMonth: Month): FeatureYear {
  const months = MONTHS.map((month) => {
    const row = rows.find((candidate) => candidate.month === month);
    return { month, name: monthName(month), known: row === undefined ? null : wordsOf(row) };
  });
  const shown = months.map(({ known }) => known?.shown ?? null);
  return { id, name, meaning: meaning ?? '', months, drawing: yearBars(shown, nowMonth, yearSentence(name, months)) };
}

function wordsOf(row: FeatureMonth): WorthWords {
  const value = Math.exp(row.logWorth);
  return worthWords({ value, low: row.low80, high: row.high80, evidence: row.evidence }, row.sessions);
}

function featuresOfMonth(month: Month, years: readonly FeatureYear[]): FeaturesOfMonth {
  const rows = years.flatMap(({ id, name, months }) => {
    const known = months[month - 1]?.known ?? null;
    return known === null ? [] : [{ id, name, known, drawing: intervalRow(known.shown) }];
  });
  return { month, name: monthName(month), rows: rows.sort((a, b) => b.known.shown.value - a.known.shown.value) };
}
