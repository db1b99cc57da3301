import type { BagPart } from '../../../domain/bag.ts';
import { countWords } from '../../../domain/count-words.ts';
import type { Day } from '../../../domain/day.ts';
import type { Listing } from '../../../domain/session.ts';
import type { Paper } from '../paper.ts';
import type { Asker } from '../questions.ts';
import {
  countQuestion,
  dayQuestion,
  disagreementQuestion,
  hiddenRowsQuestion,
  hoursQuestion,
  listingQuestion,
  waterQuestion,
} from './ask-results.ts';
import { findBlocks, type ResultBlock } from './find-blocks.ts';
import { type BlockRow, readBlock } from './read-block.ts';
import type { ResultMatch, ResultRow, Unread } from './result-row.ts';
import { dayInTitle, waterInTitle } from './title-facts.ts';

/** What of the venue a result sheet is held against. */
export interface VenueNames {
  readonly waters: readonly { readonly id: string; readonly name: string; readonly pegs: ReadonlySet<string> }[];
  readonly bagParts: readonly BagPart[];
  /** Hours of the last match of each water. */
  readonly usualHours: ReadonlyMap<string, number>;
}

export interface ResultsRead {
  readonly matches: readonly ResultMatch[];
  readonly unread: readonly Unread[];
}

/** Reads the matches of one paper. What it does not say is asked; until all is answered the matches may lack rows. */
export function readResults(paper: Paper, venue: VenueNames, asker: Asker): ResultsRead {
  const unread: Unread[] = [];
  const byDay = new Map<Day, ResultRow[]>();
  const lostOn = new Map<Day, number>();
  let blocks = 0;
  for (const sheet of paper.sheets) {
    const found = findBlocks(sheet, venue.bagParts);
    if (found.length === 0 && sheet.rows.some((row) => row.some(({ kind }) => kind !== 'empty'))) {
      const place = `${paper.file}${sheet.name === '' ? '' : `, ${sheet.name}`}`;
      unread.push({ place, what: 'a sheet', why: 'no row of headings with a word for the peg and one for the weight' });
    }
    const hidden = hiddenRowsOf(paper, found, asker);
    for (const block of found) {
      blocks += 1;
      const seen = { ...block, rows: block.rows.filter((row) => !hidden.has(row)) };
      const read = readBlock(seen, paper.file, venue.bagParts, asker);
      unread.push(...read.unread);
      holdAgainstTotal(paper.file, block, read.rows, read.statedGrams, blocks, asker);
      const key = (word: string): string => (blocks === 1 ? word : `${word} ${blocks}`);
      const day =
        block.titles.map(dayInTitle).findLast((one) => one !== null) ??
        asker.ask(dayQuestion(paper.file, key('day'), []));
      const rows = rowsOnWaters(paper.file, key('water'), block, read.rows, venue, asker, unread);
      if (day === null) continue;
      byDay.set(day, [...(byDay.get(day) ?? []), ...rows]);
      lostOn.set(day, (lostOn.get(day) ?? 0) + read.lost + (read.rows.length - rows.length));
    }
  }
  const matches = [...byDay].flatMap(([day, rows]) =>
    matchOf(paper.file, day, rows, byDay.size > 1, venue, asker).map((match) =>
      withLostRows(match, lostOn.get(day)!, unread),
    ),
  );
  return { matches, unread };
}

/**
 * A paper may list everybody, and the log still lacks whose row could not be read: then the log lists less than all who fished.
 * How many they were is told where one water held them, since an event counts its own.
 */
function withLostRows(match: ResultMatch, lost: number, unread: Unread[]): ResultMatch {
  if (lost === 0 || match.listing !== 'full') return match;
  unread.push({
    place: match.file,
    what: `the match of ${match.day} as listed in full`,
    why: `${countWords(lost, 'row')} of it could not be read, so it goes in as one that lists some of those who fished, and is left out of worth, results and leagues until the paper is mended and read again`,
  });
  const fished = match.rows.filter(({ status }) => status !== 'absent').length + lost;
  const isOfOneWater = new Set(match.rows.map(({ water }) => water)).size === 1;
  return { ...match, listing: 'frame', fished: isOfOneWater ? fished : null };
}

function hiddenRowsOf(paper: Paper, blocks: readonly ResultBlock[], asker: Asker): ReadonlySet<number> {
  const hidden = blocks.flatMap(({ sheet, rows }) => rows.filter((row) => sheet.hiddenRows.has(row)));
  if (hidden.length === 0) return new Set();
  return asker.ask(hiddenRowsQuestion(paper.file, hidden)) === 'take' ? new Set() : new Set(hidden);
}

/** The sheet's own sum is a free proof that every row was read, and read right. */
function holdAgainstTotal(
  file: string,
  block: ResultBlock,
  rows: readonly BlockRow[],
  statedGrams: number | null,
  count: number,
  asker: Asker,
): void {
  if (statedGrams === null || asker.open.length > 0) return;
  const sum = rows.reduce((grams, { weight }) => grams + (weight?.grams ?? 0), 0);
  if (Math.abs(sum - statedGrams) <= 1) return;
  asker.ask(
    disagreementQuestion(file, `total ${count}`, 'The rows do not come to what the sheet says they do.', [
      `the rows come to ${(sum / 1000).toFixed(3)} kg, row ${(block.totalRow ?? 0) + 1} says ${(statedGrams / 1000).toFixed(3)} kg`,
    ]),
  );
}

function rowsOnWaters(
  file: string,
  key: string,
  block: ResultBlock,
  rows: readonly BlockRow[],
  venue: VenueNames,
  asker: Asker,
  unread: Unread[],
): readonly ResultRow[] {
  const titled = block.titles.map((title) => waterInTitle(title, venue.waters)).findLast((one) => one !== null) ?? null;
  const ownWater = ({ waterText }: BlockRow): string | null =>
    waterText === null ? null : waterInTitle(waterText, venue.waters);
  const needs = rows.filter((row) => ownWater(row) === null);
  const pegs = [...new Set(needs.map(({ peg }) => peg))];
  const holds = venue.waters.map((water) => ({ ...water, holds: pegs.filter((peg) => water.pegs.has(peg)).length }));
  const single = venue.waters.length === 1 ? venue.waters[0]!.id : null;
  const common = needs.length === 0 ? null : (titled ?? single ?? asker.ask(waterQuestion(file, key, pegs, holds)));
  return rows.flatMap((row) => {
    const place = `${file}${block.sheet.name === '' ? '' : `, ${block.sheet.name}`}, row ${row.row + 1}`;
    const id = ownWater(row) ?? common;
    if (id === null) return [];
    const water = venue.waters.find((one) => one.id === id);
    if (water === undefined || !water.pegs.has(row.peg)) {
      unread.push({ place, what: `peg ${row.peg}`, why: `${water?.name ?? id} has no peg ${row.peg}` });
      return [];
    }
    const { row: _row, waterText: _waterText, ...rest } = row;
    return [{ ...rest, water: id, place }];
  });
}

function matchOf(
  file: string,
  day: Day,
  rows: readonly ResultRow[],
  isOneOfSeveral: boolean,
  venue: VenueNames,
  asker: Asker,
): readonly ResultMatch[] {
  if (rows.length === 0) return [];
  // One paper may hold a season: what is asked of each match then carries its day.
  const paper = isOneOfSeveral ? `${file} ${day}` : file;
  const listing = asker.ask(listingQuestion(paper, rows.length)) as Listing | null;
  const fished =
    listing === 'frame' ? asker.ask(countQuestion(paper, 'fished', 'How many fished in all?', rows.length)) : null;
  const places = asker.ask(
    countQuestion(
      paper,
      'places',
      'How many places framed (0 where nothing was paid)?',
      0,
      String(Math.max(1, Math.round(rows.length / 5))),
    ),
  );
  const usual = venue.usualHours.get(rows[0]!.water);
  const hours = asker.ask(hoursQuestion(paper, usual === undefined ? undefined : String(usual)));
  holdAgainstPositions(paper, rows, asker);
  if (listing === null || places === null || hours === null || (listing === 'frame' && fished === null)) return [];
  return [
    {
      file,
      day,
      rows,
      listing,
      framePlaces: Number(places),
      fished: fished === null ? null : Number(fished),
      hours: Number(hours),
    },
  ];
}

/** Places that do not follow the weights are a weight or a place typed wrong. */
function holdAgainstPositions(paper: string, rows: readonly ResultRow[], asker: Asker): void {
  const ranked = rows.filter(({ position, weight }) => position !== null && weight !== null);
  const bySection = new Map<string, ResultRow[]>();
  const areOverall = new Set(ranked.map(({ position }) => position)).size === ranked.length;
  for (const row of ranked) {
    const key = areOverall ? '' : (row.section ?? '');
    bySection.set(key, [...(bySection.get(key) ?? []), row]);
  }
  const wrong = [...bySection.values()].flatMap((group) => {
    const sorted = group.toSorted((a, b) => a.position! - b.position!);
    return sorted.flatMap((row, index) => {
      const before = sorted[index - 1];
      return before !== undefined && before.position! < row.position! && row.weight!.grams > before.weight!.grams + 0.5
        ? [row]
        : [];
    });
  });
  if (wrong.length === 0) return;
  asker.ask(
    disagreementQuestion(
      paper,
      'places and weights',
      'Places and weights do not agree.',
      wrong
        .slice(0, 5)
        .map(
          ({ place, peg, weight, position }) =>
            `${place}: peg ${peg}, ${weight!.written}, is placed ${position} behind a lighter bag`,
        ),
    ),
  );
}
