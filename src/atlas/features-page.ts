import { type Month, monthName, monthOf } from '../domain/day.ts';
import type { BagId, ChoiceWorth, FishSize } from '../ratings/ratings.ts';
import type { Atlas } from './atlas.ts';
import { type BesideTables, besideTables } from './beside-tables.ts';
import { amountRow, intervalRow } from './drawing/interval-row.ts';
import { type FeaturePegs, featurePegs } from './feature-pegs.ts';
import { type FeatureMonthsView, featureMonthsView } from './feature-years.ts';
import { type FeatureTemperatures, featureTemperatures } from './features-by-temperature.ts';
import { formatFishWeight } from './fish-weight.ts';
import { ratingsNoteWords } from './ratings-words.ts';
import { siteLink } from './site-link.ts';
import { type WorthWords, worthWords } from './worth-words.ts';

/** One table of what anglers chose. */
export interface ChoiceTable {
  readonly water: string;
  /** "Where they fished", "Method", … */
  readonly about: string;
  readonly rows: readonly { readonly value: string; readonly known: WorthWords; readonly drawing: string }[];
}

/** Mean fish size of one bag part of one water, by year. */
export interface SizeTable {
  readonly water: string;
  readonly part: string;
  readonly rows: readonly {
    readonly year: number;
    readonly mean: string;
    readonly likely: string;
    readonly fish: string;
    readonly drawing: string;
  }[];
}

export interface FeaturesPage {
  readonly bag: BagId;
  /** "the total bag", "silvers". */
  readonly bagWords: string;
  /** The switch: one page a bag. */
  readonly bags: readonly { readonly name: string; readonly href: string; readonly isThis: boolean }[];
  readonly nowMonth: Month;
  readonly nowName: string;
  readonly view: FeatureMonthsView;
  /** Which pegs have each feature; on the page of the total bag alone. */
  readonly pegs: readonly FeaturePegs[] | null;
  /** What cannot be told apart here. */
  readonly notes: readonly string[];
  /** The tables below stand on the page of the total bag alone. */
  readonly temperatures: FeatureTemperatures | null;
  /** What a day or the bed gives beside the peg, where that earned its place. */
  readonly besides: readonly BesideTables[];
  readonly choices: readonly ChoiceTable[];
  readonly sizes: readonly SizeTable[];
}

const ABOUT: readonly { readonly about: ChoiceWorth['about']; readonly words: string }[] = [
  { about: 'spot', words: 'Where they fished' },
  { about: 'method', words: 'Method' },
  { about: 'bait', words: 'Bait' },
  { about: 'lines', words: 'Lines fed' },
];

/** Bags that have a page of features of their own: the parts that the log rates. */
export function bagsWithFeatures(atlas: Atlas): readonly { readonly id: BagId; readonly name: string }[] {
  return atlas.venue.settings.bagParts.filter(({ id }) => atlas.ratings.bags.some(({ bag }) => bag === id));
}

/** Features by month for one bag; for the total also by temperature, what anglers chose, and the size of fish. */
export function featuresPage(atlas: Atlas, bag: BagId): FeaturesPage {
  const nowMonth = monthOf(atlas.venue.settings.guideDay);
  const parts = bagsWithFeatures(atlas);
  const isTotal = bag === 'total';
  return {
    bag,
    bagWords: isTotal ? 'the total bag' : (parts.find(({ id }) => id === bag)?.name.toLowerCase() ?? bag),
    bags: [{ id: 'total', name: 'Total bag' }, ...parts].map(({ id, name }) => ({
      name,
      href: siteLink(id === 'total' ? 'features/' : `features/${encodeURIComponent(id)}/`),
      isThis: id === bag,
    })),
    nowMonth,
    nowName: monthName(nowMonth),
    view: featureMonthsView(atlas, bag, nowMonth),
    pegs: isTotal ? featurePegs(atlas) : null,
    notes: atlas.ratings.notes.map(ratingsNoteWords),
    temperatures: isTotal ? featureTemperatures(atlas) : null,
    besides: isTotal ? besideTables(atlas) : [],
    choices: isTotal ? choiceTables(atlas) : [],
    sizes: isTotal ? sizeTables(atlas) : [],
  };
}

function choiceTables(atlas: Atlas): readonly ChoiceTable[] {
  return atlas.venue.waters.flatMap((water) =>
    ABOUT.map(({ about, words }) => {
      const rows = atlas.ratings.choices.filter((choice) => choice.water === water.id && choice.about === about);
      return { water: water.name, about: words, rows: rows.map(choiceRow) };
    }).filter(({ rows }) => rows.length > 0),
  );
}

function choiceRow(choice: ChoiceWorth): ChoiceTable['rows'][number] {
  const shown = { value: choice.worth, low: choice.low80, high: choice.high80, evidence: choice.evidence };
  return { value: choice.value, known: worthWords(shown, choice.sessions), drawing: intervalRow(shown) };
}

function sizeTables(atlas: Atlas): readonly SizeTable[] {
  const { settings, waters } = atlas.venue;
  return waters.flatMap((water) =>
    settings.bagParts
      .map((part) => {
        const sizes = atlas.ratings.fishSizes.filter((size) => size.water === water.id && size.part === part.id);
        return { water: water.name, part: part.name, rows: sizeRows(sizes, settings.units) };
      })
      .filter(({ rows }) => rows.length > 0),
  );
}

function sizeRows(sizes: readonly FishSize[], units: Parameters<typeof formatFishWeight>[1]): SizeTable['rows'] {
  const highest = Math.max(...sizes.map(({ high80Grams }) => high80Grams));
  return [...sizes]
    .sort((a, b) => a.year - b.year)
    .map(({ year, fish, meanGrams, low80Grams, high80Grams }) => ({
      year,
      mean: formatFishWeight(meanGrams, units),
      likely: `${formatFishWeight(low80Grams, units)} to ${formatFishWeight(high80Grams, units)}`,
      fish: fish.toLocaleString('en-GB'),
      drawing: amountRow({ value: meanGrams, low: low80Grams, high: high80Grams }, 0, highest),
    }));
}
