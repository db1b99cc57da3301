import type { BagPart } from '../../../domain/bag.ts';
import type { SessionStatus } from '../../../domain/session.ts';
import { type ColumnUse, columnUse } from '../headings.ts';
import { cellAt, type PaperCell } from '../paper.ts';
import type { Asker } from '../questions.ts';
import {
  columnQuestion,
  datesQuestion,
  decimalsQuestion,
  markQuestion,
  shapeOf,
  tenthsQuestion,
} from './ask-results.ts';
import type { BlockColumn, ResultBlock } from './find-blocks.ts';
import type { Unread } from './result-row.ts';
import type { DecimalReading, SheetWeight } from './sheet-weight.ts';
import { sectionInTitle } from './title-facts.ts';
import {
  isPointOne,
  type WeightAnswers,
  type WeightColumns,
  weightCells,
  weightColumns,
  weightOfRow,
} from './weight-columns.ts';

/** A row of a block with its cells understood; which water and event it belongs to is not settled here. */
export interface BlockRow {
  readonly row: number;
  readonly peg: string;
  readonly name: string;
  readonly section: string | null;
  readonly waterText: string | null;
  readonly position: number | null;
  readonly status: SessionStatus;
  readonly weight: { readonly grams: number; readonly written: string } | null;
  readonly parts: Readonly<Record<string, { readonly written?: string; readonly count?: number }>>;
}

export interface BlockRead {
  readonly rows: readonly BlockRow[];
  readonly unread: readonly Unread[];
  /** Rows of somebody who fished that could not be read: without them the match is not listed in full. */
  readonly lost: number;
  /** What the sheet's own row of totals says the bags come to, in grams; null where it says nothing. */
  readonly statedGrams: number | null;
}

/** Reads the rows of one block. Where something has to be asked, the rows that need the answer are left out of this pass. */
export function readBlock(block: ResultBlock, file: string, bagParts: readonly BagPart[], asker: Asker): BlockRead {
  const shape = shapeOf(block.columns.map(({ heading }) => heading));
  const place = (row: number): string =>
    `${file}${block.sheet.name === '' ? '' : `, ${block.sheet.name}`}, row ${row + 1}`;
  const unread: Unread[] = [];
  const columns = settledColumns(block, shape, bagParts, asker, unread, place);
  const only = (what: ColumnUse['what']): number | null => columns.find(({ use }) => use.what === what)?.index ?? null;
  const pegColumn = only('peg');
  const { weight, left } = weightColumns(columns.filter(({ use }) => use.what === 'weight' || use.what === 'net'));
  for (const column of left) {
    unread.push({
      place: place(block.headingRow),
      what: `column "${column.heading}"`,
      why: 'another column holds the whole bag',
    });
  }
  if (pegColumn === null || weight === null) return { rows: [], unread, lost: 0, statedGrams: null };
  const answers = weightAnswers(block, weight, shape, asker, place);
  const partColumns = bagParts.flatMap(({ id }) => {
    const own = columns.filter(({ use }) => use.what === 'part' && use.part === id);
    const found = weightColumns(own).weight;
    return found === null ? [] : [{ id, columns: found }];
  });
  const rows: BlockRow[] = [];
  let lost = 0;
  const marks = new Map<string, string[]>();
  let section: string | null = firstSection(block.titles);
  for (const row of mergedOrder(block)) {
    const subtitle = block.subtitles.get(row);
    if (subtitle !== undefined) {
      section = sectionInTitle(subtitle) ?? section;
      continue;
    }
    const text = (column: number | null): string => (column === null ? '' : cellAt(block.sheet, row, column).text);
    const peg = pegIn(text(pegColumn));
    const name = text(only('name'));
    if (peg === null) {
      unread.push({ place: place(row), what: rowText(block, row), why: `no peg in it ("${text(pegColumn)}")` });
      // A remark under a list has no weight; a row that has one is somebody's.
      if (weightOfRow(block.sheet, row, weight, answers).kind === 'weight') lost++;
      continue;
    }
    const bag = weightOfRow(block.sheet, row, weight, answers);
    if (
      name === '' &&
      bag.kind === 'mark' &&
      weightCells(block.sheet, row, weight).every(({ kind }) => kind === 'empty')
    ) {
      unread.push({ place: place(row), what: `peg ${peg}`, why: 'no angler and no weight: nobody drew it' });
      continue;
    }
    const settled = settledBag(bag, shape, marks, place(row), asker);
    if (settled === null) continue;
    if ('why' in settled) {
      unread.push({ place: place(row), what: `peg ${peg}`, why: settled.why });
      lost++;
      continue;
    }
    const parts: Record<string, { written?: string; count?: number }> = {};
    for (const part of partColumns) {
      const read = weightOfRow(block.sheet, row, part.columns, answers);
      if (read.kind === 'weight') parts[part.id] = { written: read.written };
      else if (read.kind === 'mark' && read.mark === '0') parts[part.id] = { written: '0' };
      else if (read.kind === 'unreadable' || read.kind === 'date') {
        unread.push({
          place: place(row),
          what: `${part.id} of peg ${peg}`,
          why: read.kind === 'date' ? 'a date' : read.why,
        });
      }
    }
    for (const { use, index } of columns) {
      const counted = text(index);
      if (use.what !== 'count' || counted === '') continue;
      if (/^\d{1,5}$/.test(counted)) parts[use.part] = { ...parts[use.part], count: Number(counted) };
      else
        unread.push({
          place: place(row),
          what: `number of ${use.part} of peg ${peg}`,
          why: `"${counted}" is no number`,
        });
    }
    const rank = /^\d{1,3}/.exec(text(only('position')))?.[0];
    rows.push({
      row,
      peg,
      name,
      section: sectionOfRow(text(only('section'))) ?? section,
      waterText: text(only('water')) || null,
      position: rank === undefined ? null : Number(rank),
      status: settled.status,
      weight: settled.weight,
      parts: settled.status === 'weighed' || settled.status === 'blank' ? parts : {},
    });
  }
  for (const [mark, places] of marks) asker.ask(markQuestion(shape, mark, places));
  return { rows, unread, lost, statedGrams: statedGrams(block, weight, answers) };
}

function mergedOrder(block: ResultBlock): readonly number[] {
  return [...block.rows, ...block.subtitles.keys()].sort((a, b) => a - b);
}

function settledColumns(
  block: ResultBlock,
  shape: string,
  bagParts: readonly BagPart[],
  asker: Asker,
  unread: Unread[],
  place: (row: number) => string,
): readonly BlockColumn[] {
  return block.columns.flatMap((column) => {
    if (column.use.what === 'points') {
      unread.push({
        place: place(block.headingRow),
        what: `column "${column.heading}"`,
        why: 'worked out from the weights',
      });
      return [];
    }
    if (column.use.what !== 'unknown') return [column];
    const examples = block.rows.map((row) => cellAt(block.sheet, row, column.index).text).filter((text) => text !== '');
    if (examples.length === 0) return [];
    const answer = asker.ask(columnQuestion(shape, column.heading, examples, bagParts));
    if (answer === null) return [];
    if (answer === 'leave') {
      unread.push({ place: place(block.headingRow), what: `column "${column.heading}"`, why: 'left, as was answered' });
      return [];
    }
    const [word = '', kind] = answer.split(' ');
    if (kind === 'count') return [{ ...column, use: { what: 'count', part: word } as const }];
    if (kind === 'weight') {
      const stated = columnUse(column.heading);
      const unit = stated.what === 'weight' && stated.unit !== undefined ? { unit: stated.unit } : {};
      return [{ ...column, use: { what: 'part', part: word, ...unit } as const }];
    }
    return [{ ...column, use: { what: word as 'section' | 'name' | 'weight' } }];
  });
}

function weightAnswers(
  block: ResultBlock,
  weight: WeightColumns,
  shape: string,
  asker: Asker,
  place: (row: number) => string,
): WeightAnswers {
  const unsettled: WeightAnswers = { decimals: null, pointOne: null, dates: null };
  const rows = block.totalRow === null ? block.rows : [...block.rows, block.totalRow];
  const read = rows.map((row) => weightOfRow(block.sheet, row, weight, unsettled));
  const decimals = read.flatMap((one) => (one.kind === 'decimal' ? [one.text] : []));
  // Whole pounds alone are pounds in every reading but kilograms; they are asked about all the same.
  const reading =
    decimals.length === 0 ? null : (asker.ask(decimalsQuestion(shape, decimals)) as DecimalReading | null);
  const points = block.rows.filter((row) => weightCells(block.sheet, row, weight).some(isPointOne));
  const pointOne =
    reading === 'pounds-ounces' && points.length > 0
      ? (asker.ask(tenthsQuestion(shape, points.map(place))) as 'one' | 'ten' | null)
      : null;
  const dates = read.flatMap((one) => (one.kind === 'date' ? [one.text] : []));
  return {
    decimals: reading,
    pointOne,
    dates: dates.length === 0 ? null : (asker.ask(datesQuestion(shape, dates)) as 'pounds-ounces' | 'leave' | null),
  };
}

type SettledBag =
  | { readonly status: SessionStatus; readonly weight: { readonly grams: number; readonly written: string } | null }
  | { readonly why: string };

/** Null where the club has to be asked first. */
function settledBag(
  bag: SheetWeight,
  shape: string,
  marks: Map<string, string[]>,
  place: string,
  asker: Asker,
): SettledBag | null {
  if (bag.kind === 'weight') return { status: 'weighed', weight: { grams: bag.grams, written: bag.written } };
  if (bag.kind === 'unreadable') return { why: bag.why };
  if (bag.kind !== 'mark') return null;
  const places = [...(marks.get(bag.mark) ?? []), place];
  marks.set(bag.mark, places);
  const meaning = asker.ask(markQuestion(shape, bag.mark, places)) as SessionStatus | null;
  return meaning === null ? null : { status: meaning, weight: null };
}

function statedGrams(block: ResultBlock, weight: WeightColumns, answers: WeightAnswers): number | null {
  if (block.totalRow === null) return null;
  const { lb, oz, dr } = weight.units;
  if (lb !== undefined && oz !== undefined) {
    // A sum of pounds and one of ounces: the ounces of a sum may pass 15.
    const of = (column: number | undefined): number =>
      column === undefined ? 0 : Number(cellAt(block.sheet, block.totalRow!, column).text);
    const grams = (of(lb) * 256 + of(oz) * 16 + of(dr)) * (453.59237 / 256);
    return Number.isFinite(grams) && grams > 0 ? grams : null;
  }
  const stated = weightOfRow(block.sheet, block.totalRow, weight, answers);
  return stated.kind === 'weight' ? stated.grams : null;
}

function firstSection(titles: readonly string[]): string | null {
  for (const title of [...titles].reverse()) {
    const section = sectionInTitle(title);
    if (section !== null) return section;
  }
  return null;
}

function sectionOfRow(text: string): string | null {
  if (text === '') return null;
  return sectionInTitle(text) ?? (/^[a-z0-9]{1,2}$/i.test(text) ? text.toUpperCase() : null);
}

/** `23`, `Peg 23`, `023`, `14A`, as the post says it: small letters, no noughts in front. */
export function pegIn(text: string): string | null {
  const found = /^(?:peg\s*)?#?0*(\d{1,4})\s*([a-z])?\.?$/i.exec(text.trim());
  return found === null ? null : `${found[1]}${(found[2] ?? '').toLowerCase()}`;
}

function rowText(block: ResultBlock, row: number): string {
  // What a row holds may be a name: only how many cells is told.
  const cells = (block.sheet.rows[row] ?? []).filter(({ kind }: PaperCell) => kind !== 'empty').length;
  return `a row of ${cells} ${cells === 1 ? 'cell' : 'cells'}`;
}
