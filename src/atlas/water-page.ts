import { countWords } from '../domain/count-words.ts';
import { type Day, formatDay, type Month, monthOf } from '../domain/day.ts';
import { formatLength } from '../domain/length.ts';
import { pegKey } from '../domain/peg.ts';
import type { WaterSurvey } from '../ground/survey.ts';
import { sayIn } from '../words/say.ts';
import { type Atlas, surveyOfPeg, surveyOfWater, waterOf } from './atlas.ts';
import { unusedWords } from './depth-words.ts';
import type { MapDrawing } from './drawing/map-svg.ts';
import { type FeatureMonthsView, featureMonthsOfWater } from './feature-years.ts';
import { type FishHours, fishHours } from './fish-hours.ts';
import { linesOfMapWords } from './lines-survey-words.ts';
import { markdownHtml } from './markdown-html.ts';
import { type NoticesByState, noticesOfWater } from './notices-page.ts';
import type { Fact } from './peg-bank.ts';
import { type PegChoices, pegChoices } from './peg-choices.ts';
import { type PegLine, pegLines } from './peg-line.ts';
import { clockWords, type SunMonth, sunMonths } from './peg-sky.ts';
import { closedCount } from './peg-verdicts.ts';
import { type PlaceFindingLine, placeFindingLines } from './place-finding-lines.ts';
import { type UnrolledBank, unrolledBank } from './unrolled-bank.ts';
import { waterHistoryFacts } from './water-history-words.ts';
import { waterMap } from './water-map.ts';
import { type WaterYear, waterYear } from './water-year.ts';
import { type WaysUnderLines, waysUnderLinesOfWater } from './ways-under-lines.ts';

/** Sunrise to sunset on the fifteenth of each month. */
export interface Daylight {
  readonly months: readonly Pick<SunMonth, 'month' | 'name' | 'daylight'>[];
  /** "local time", or "UTC" outside Great Britain. */
  readonly clock: string;
}

/** Everything on the page of one water. */
export interface WaterPage {
  readonly id: string;
  readonly name: string;
  readonly kind: string;
  readonly month: Month;
  readonly guideDay: Day;
  readonly access: string | null;
  readonly facts: readonly Fact[];
  readonly notices: NoticesByState;
  /** Current hazards that are at no peg. */
  readonly findings: readonly PlaceFindingLine[];
  readonly waysUnderLines: WaysUnderLines | null;
  readonly map: MapDrawing;
  readonly bank: UnrolledBank;
  readonly linesWords: string;
  readonly pegs: readonly PegLine[];
  readonly choices: PegChoices;
  readonly features: FeatureMonthsView;
  readonly year: WaterYear;
  readonly hours: FishHours;
  readonly notesHtml: string;
  /** Of its first peg, which is right to the minute for them all; null without one. */
  readonly daylight: Daylight | null;
}

/** Puts together the page of one water. */
export function waterPage(atlas: Atlas, id: string): WaterPage {
  const water = waterOf(atlas, id);
  const survey = surveyOfWater(atlas, id);
  const month = monthOf(atlas.venue.settings.guideDay);
  return {
    id,
    name: water.name,
    kind: water.kind,
    month,
    guideDay: atlas.venue.settings.guideDay,
    access: water.access ?? null,
    facts: waterFacts(atlas, id, survey),
    notices: noticesOfWater(atlas.venue, id),
    findings: placeFindingLines(atlas.venue, [water]),
    waysUnderLines: waysUnderLinesOfWater(atlas, id),
    map: waterMap(atlas, id),
    bank: unrolledBank(atlas, id),
    linesWords: linesOfMapWords(atlas, id),
    pegs: pegLines(atlas, id),
    choices: pegChoices(atlas, id),
    features: featureMonthsOfWater(atlas, id, month),
    year: waterYear(atlas, id),
    hours: fishHours(atlas.venue, id),
    notesHtml: markdownHtml(water.notesMarkdown, 3),
    daylight: daylightOf(atlas, id),
  };
}

function daylightOf(atlas: Atlas, id: string): Daylight | null {
  const [first] = atlas.pegsByWater.get(id) ?? [];
  if (first === undefined) return null;
  const say = sayIn('en');
  return {
    months: sunMonths(surveyOfPeg(atlas, pegKey(id, first.peg)), say),
    clock: clockWords(surveyOfWater(atlas, id).timeZone, say),
  };
}

const SQUARE_METRES_PER_ACRE = 4046.8564224;
/** The imperial gallon, 4.54609 litres (Weights and Measures Act 1985, schedule 1). */
const CUBIC_METRES_PER_GALLON = 0.00454609;

function waterFacts(atlas: Atlas, id: string, { areaSquareMetres, depth, level }: WaterSurvey): readonly Fact[] {
  const { venue } = atlas;
  const { units } = venue.settings;
  const pegs = venue.pegs.filter((peg) => peg.water === id);
  const closed = closedCount(atlas, pegs);
  const on = formatDay(venue.settings.guideDay);
  const water = venue.waters.find((each) => each.id === id);
  return [
    {
      name: 'Pegs',
      words:
        closed === 0 ? `${pegs.length}, none closed on ${on}` : `${pegs.length}, ${closed} of them closed on ${on}`,
    },
    { name: 'Area', words: areaWords(areaSquareMetres) },
    {
      name: 'Depth',
      words:
        depth === null
          ? 'not plumbed'
          : `${formatLength(depth.meanMetres, units)} on average, ${formatLength(depth.maximumMetres, units)} at most, from ${countWords(depth.soundings, 'sounding')}`,
    },
    ...(depth === null ? [] : depthFacts(depth)),
    {
      name: 'Level',
      words:
        level === null
          ? 'no reading'
          : `${formatLength(Math.abs(level.metres), units)} ${level.metres < 0 ? 'below' : 'above'} datum on ${formatDay(level.day)}`,
    },
    { name: 'Datum', words: water?.datum ?? 'not known' },
    { name: 'Close season', words: water?.closeSeason ?? 'unknown' },
    ...(water === undefined ? [] : waterHistoryFacts(water, pegs, units)),
  ];
}

function depthFacts(depth: NonNullable<WaterSurvey['depth']>): readonly Fact[] {
  return [
    { name: 'Volume', words: volumeWords(depth.volumeCubicMetres) },
    { name: 'Plumbed', words: `${Math.round(depth.plumbedShare * 100)}% of the area lies near a sounding` },
    ...depth.unused.map((unused) => ({
      name: 'Not used',
      words: `${countWords(unused.soundings, 'sounding')}: ${unusedWords(unused)}`,
    })),
  ];
}

/** Hectares and acres: the trade uses both. */
function areaWords(squareMetres: number): string {
  return `${(squareMetres / 10_000).toFixed(2)} ha (${(squareMetres / SQUARE_METRES_PER_ACRE).toFixed(2)} acres)`;
}

function volumeWords(cubicMetres: number): string {
  const rounded = Number(cubicMetres.toPrecision(3)).toLocaleString('en-GB');
  const gallons = Number((cubicMetres / CUBIC_METRES_PER_GALLON).toPrecision(3)).toLocaleString('en-GB');
  return `${rounded} m³ (${gallons} gallons)`;
}
