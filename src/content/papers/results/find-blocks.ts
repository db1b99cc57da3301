import type { BagPart } from '../../../domain/bag.ts';
import { type ColumnUse, columnUse, hasResultHeadings } from '../headings.ts';
import { cellAt, type PaperSheet } from '../paper.ts';

/** A column of a block, with the heading that said what it holds. */
export interface BlockColumn {
  /** Counted from 0 in its sheet. */
  readonly index: number;
  readonly heading: string;
  readonly use: ColumnUse;
}

/** A run of rows below one line of headings: a section, a water, or a whole match. */
export interface ResultBlock {
  readonly sheet: PaperSheet;
  /** Row of the headings, counted from 0. */
  readonly headingRow: number;
  readonly columns: readonly BlockColumn[];
  /** Rows with a peg, in order. */
  readonly rows: readonly number[];
  /** The sheet's own sum, where it states one. */
  readonly totalRow: number | null;
  /** What stands above the headings and belongs to this block, and what stands above all blocks of its sheet. */
  readonly titles: readonly string[];
  /** Lines within the block that are a title of the rows below them: "Section B". */
  readonly subtitles: ReadonlyMap<number, string>;
}

const TOTAL = /\b(total|totals|sum|grand total|match total|overall weight)\b/i;

/**
 * The tables of results in a sheet: each begins with a row of headings that names a peg and a weight, and ends at an empty
 * row, at a row of totals or at the next headings. Tables side by side are set apart by an empty column, or by headings
 * that begin anew.
 */
export function findBlocks(sheet: PaperSheet, bagParts: readonly BagPart[]): readonly ResultBlock[] {
  const blocks: ResultBlock[] = [];
  const shared: string[] = [];
  let after = 0;
  for (let row = 0; row < sheet.rows.length; row++) {
    if (!hasResultHeadings(headingsOf(sheet, row))) continue;
    const between = linesBetween(sheet, after, row);
    if (blocks.length === 0) shared.push(...between.map(({ text }) => text));
    const bodyStart = isUnitRow(sheet, row + 1) ? row + 2 : row + 1;
    const end = bodyEnd(sheet, bodyStart);
    for (const [from, to] of segments(sheet, row, bodyStart, end)) {
      const titles = between.filter(({ column }) => column >= from && column <= to).map(({ text }) => text);
      blocks.push(blockOf(sheet, row, bodyStart, end, from, to, [...shared, ...titles], bagParts));
    }
    row = end - 1;
    after = end;
  }
  return blocks;
}

/** The headings of a row; below a merged cell stands that cell's. */
function headingsOf(sheet: PaperSheet, row: number): readonly string[] {
  return (sheet.rows[row] ?? []).map((cell, column) => cell.text || (sheet.merged.get(`${row}:${column}`) ?? ''));
}

/** A second line of headings that holds units alone: lb, oz. */
function isUnitRow(sheet: PaperSheet, row: number): boolean {
  const texts = (sheet.rows[row] ?? []).map(({ text }) => text).filter((text) => text !== '');
  return texts.length > 0 && texts.every((text) => /^(lbs?|ozs?|drs?|kgs?|g|no\.?|wt\.?)$/i.test(text));
}

function bodyEnd(sheet: PaperSheet, start: number): number {
  for (let row = start; row < sheet.rows.length; row++) {
    const texts = (sheet.rows[row] ?? []).filter(({ text }) => text !== '');
    if (texts.length === 0 || hasResultHeadings(headingsOf(sheet, row))) return row;
    if (texts.some(({ text }) => TOTAL.test(text))) return row + 1;
  }
  return sheet.rows.length;
}

function segments(
  sheet: PaperSheet,
  headingRow: number,
  bodyStart: number,
  end: number,
): readonly (readonly [number, number])[] {
  const headings = headingsOf(sheet, headingRow);
  const isEmpty = (column: number): boolean => {
    if ((headings[column] ?? '') !== '') return false;
    for (let row = bodyStart; row < end; row++) if (cellAt(sheet, row, column).text !== '') return false;
    return true;
  };
  const runs: [number, number][] = [];
  const width = Math.max(...sheet.rows.slice(headingRow, end).map((row) => row.length));
  for (let column = 0; column < width; column++) {
    if (isEmpty(column)) continue;
    const run = runs.at(-1);
    if (run !== undefined && run[1] === column - 1) run[1] = column;
    else runs.push([column, column]);
  }
  const split = runs.flatMap((run) => atRepeats(headings, run));
  const whole = split.filter(([from, to]) => hasResultHeadings(headings.slice(from, to + 1)));
  // One table with an empty column inside it is still one.
  return whole.length > 0 ? whole : [[0, width - 1]];
}

/** Tables that touch: the first heading comes again. */
function atRepeats(headings: readonly string[], [from, to]: readonly [number, number]): readonly [number, number][] {
  const first = headings[from] ?? '';
  const starts = [from];
  for (let column = from + 1; column <= to; column++) {
    if (first !== '' && headings[column] === first && hasResultHeadings(headings.slice(starts.at(-1), column))) {
      starts.push(column);
    }
  }
  return starts.map((start, index) => [start, (starts[index + 1] ?? to + 1) - 1]);
}

function linesBetween(sheet: PaperSheet, from: number, to: number): readonly { text: string; column: number }[] {
  return sheet.rows.slice(from, to).flatMap((row) =>
    row.flatMap((cell, column) => {
      if (cell.text === '') return [];
      return [{ text: cell.kind === 'date' ? (cell.day ?? cell.text) : cell.text, column }];
    }),
  );
}

function blockOf(
  sheet: PaperSheet,
  headingRow: number,
  bodyStart: number,
  end: number,
  from: number,
  to: number,
  titles: readonly string[],
  bagParts: readonly BagPart[],
): ResultBlock {
  const headings = headingsOf(sheet, headingRow);
  const columns: BlockColumn[] = [];
  for (let index = from; index <= to; index++) {
    const units = bodyStart === headingRow + 2 ? cellAt(sheet, headingRow + 1, index).text : '';
    const heading = [headings[index] ?? '', units].filter((text) => text !== '').join(' ');
    if (heading !== '') columns.push({ index, heading, use: columnUse(heading, bagParts) });
  }
  const pegColumn = columns.find(({ use }) => use.what === 'peg')?.index ?? from;
  const rows: number[] = [];
  const subtitles = new Map<number, string>();
  let totalRow: number | null = null;
  for (let row = bodyStart; row < end; row++) {
    const cells = (sheet.rows[row] ?? []).slice(from, to + 1).filter(({ text }) => text !== '');
    if (cells.length === 0) continue;
    if (cells.some(({ text }) => TOTAL.test(text))) totalRow = row;
    else if (cells.length === 1 && cellAt(sheet, row, pegColumn).kind !== 'number' && /\bsect/i.test(cells[0]!.text)) {
      subtitles.set(row, cells[0]!.text);
    } else rows.push(row);
  }
  return { sheet, headingRow, columns, rows, totalRow, titles, subtitles };
}
