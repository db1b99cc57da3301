import { FORECASTER_WORDS, LEFT_OUT_WORDS, ratingsNoteWords } from '../atlas/ratings-words.ts';
import { type Month, monthName } from '../domain/day.ts';
import { INTERVAL_WORDS } from '../domain/interval-level.ts';
import type { Venue } from '../domain/venue.ts';
import { formatWeight } from '../domain/weight.ts';
import type { BagTables, Evidence, FramingMonth, Ratings } from '../ratings/ratings.ts';
import { textTable } from './text-table.ts';

/** What `ratings` prints for a person: the worth of one bag in one month, and how far it can be trusted. */
export function ratingsText(venue: Venue, ratings: Ratings, tables: BagTables, month: Month): string {
  const of = tables.bag === 'total' ? 'whole bag' : (partName(venue, tables.bag) ?? tables.bag);
  return [
    `${venue.settings.name}, ${monthName(month)}: worth of the ${of} in multiples of par, with ${INTERVAL_WORDS} intervals`,
    '',
    ...features(venue, tables, month),
    '',
    ...venue.waters.flatMap((water) => [water.name, ...pegs(tables, water.id, month), '']),
    ...framing(venue, ratings, month),
    '',
    ...workings(tables, ratings),
  ].join('\n');
}

function features(venue: Venue, tables: BagTables, month: Month): string[] {
  const names = new Map(venue.settings.features.map(({ id, name }) => [id, name]));
  const rows = tables.featureMonths
    .filter((row) => row.month === month)
    .map((row) => [names.get(row.feature) ?? row.feature, ...worthCells(Math.exp(row.logWorth), row)]);
  return textTable([['Feature', ...HEADS], ...rows]);
}

function pegs(tables: BagTables, water: string, month: Month): string[] {
  const rows = tables.pegMonths
    .filter((row) => row.water === water && row.month === month)
    .map((row) => [row.peg, ...worthCells(row.worth, row)]);
  return textTable([['Peg', ...HEADS], ...rows]);
}

const HEADS = ['worth', 'low', 'high', 'sessions', 'evidence'];

interface Doubt {
  readonly low80: number;
  readonly high80: number;
  readonly sessions: number;
  readonly evidence: Evidence;
}

function worthCells(multiple: number, { low80, high80, sessions, evidence }: Doubt): string[] {
  return [multiple.toFixed(2), low80.toFixed(2), high80.toFixed(2), String(sessions), evidence];
}

function framing(venue: Venue, ratings: Ratings, month: Month): string[] {
  const { units } = venue.settings;
  const weight = (kilograms: number) => formatWeight(kilograms * 1000, units);
  const span = (middle: number | null, low: number | null, high: number | null) =>
    middle === null || low === null || high === null
      ? 'not known'
      : low === high
        ? weight(middle)
        : `${weight(middle)} (${weight(low)} to ${weight(high)})`;
  const cells = (row: FramingMonth) => [
    String(row.events),
    span(row.frameKg, row.frameLowKg, row.frameHighKg),
    span(row.winKg, row.winLowKg, row.winHighKg),
  ];
  const names = new Map(venue.waters.map(({ id, name }) => [id, name]));
  const rows = ratings.framing
    .filter((row) => row.month === month && row.events > 0)
    .map((row) => [names.get(row.water) ?? row.water, ...cells(row)]);
  return rows.length === 0
    ? [`No match is logged in ${monthName(month)}.`]
    : textTable([['Water', 'matches', 'to frame', 'to win'], ...rows]);
}

const TERM_WORDS = {
  event: 'day',
  angler: 'angler',
  peg: 'peg',
  feature: 'feature',
  featureMonth: 'feature in its month',
  residual: 'luck of the bag',
} as const satisfies Record<keyof BagTables['model']['sd'], string>;

function workings(tables: BagTables, ratings: Ratings): string[] {
  const { sd, sessions, censored, logMarginal } = tables.model;
  const spread = (Object.keys(TERM_WORDS) as (keyof typeof TERM_WORDS)[]).map(
    (term) => `${TERM_WORDS[term]} ${sd[term].toFixed(3)}`,
  );
  return [
    `${sessions} sessions, ${censored} of them known only as “at most this”.`,
    `Standard deviations on the log scale: ${spread.join(', ')}. Log marginal likelihood ${logMarginal.toFixed(2)}.`,
    ...ratings.leftOut.map(({ why, sessions: count }) => `Left out: ${count} (${LEFT_OUT_WORDS[why].what}).`),
    ...backtest(ratings),
    ...ratings.notes.map(ratingsNoteWords),
  ];
}

function backtest({ backtest: test }: Ratings): string[] {
  if (test === null) return ['No back-test: the log holds too few matches before its last year.'];
  const rows = test.scores.map(({ name, rootMeanSquareError, rankAgreement, coverage80 }) => [
    FORECASTER_WORDS[name].name.toLowerCase(),
    rootMeanSquareError.toFixed(3),
    rankAgreement.toFixed(3),
    coverage80 === null ? '' : `${(100 * coverage80).toFixed(0)}%`,
  ]);
  return [
    '',
    `Back-test: ${test.events} matches of the last year, ${test.sessions} bags, each forecast from earlier matches only.`,
    ...textTable([['', 'error (log)', 'rank agreement', `in ${INTERVAL_WORDS}`], ...rows]),
    '',
  ];
}

function partName(venue: Venue, part: string): string | undefined {
  return venue.settings.bagParts.find(({ id }) => id === part)?.name.toLowerCase();
}
