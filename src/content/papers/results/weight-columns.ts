import type { WeightUnit } from '../headings.ts';
import { cellAt, EMPTY_CELL, type PaperCell, type PaperSheet } from '../paper.ts';
import type { BlockColumn } from './find-blocks.ts';
import {
  type DecimalReading,
  readSheetWeight,
  type SheetWeight,
  weightOfColumns,
  weightOfDate,
} from './sheet-weight.ts';

/** The columns that make up one weight: one cell, a pair of pounds and ounces, or several nets. */
export interface WeightColumns {
  readonly units: Readonly<Partial<Record<WeightUnit, number>>>;
  /** Columns of whole weights that add up; one unless nets are weighed apart. */
  readonly whole: readonly number[];
  /** The unit that the heading of the whole column states. */
  readonly unit: WeightUnit | null;
}

/** What the club has said of this shape of sheet. */
export interface WeightAnswers {
  readonly decimals: DecimalReading | null;
  /** Whether `.1` in a cell of numbers lost its nought. */
  readonly pointOne: 'one' | 'ten' | null;
  readonly dates: 'pounds-ounces' | 'leave' | null;
}

/** Puts the columns of one weight together; `left` are those that say the same again. */
export function weightColumns(columns: readonly BlockColumn[]): {
  readonly weight: WeightColumns | null;
  readonly left: readonly BlockColumn[];
} {
  const unitOf = ({ use }: BlockColumn): WeightUnit | undefined =>
    use.what === 'weight' || use.what === 'part' ? use.unit : undefined;
  const pounds = columns.find((column) => unitOf(column) === 'lb');
  const ounces = columns.find((column) => unitOf(column) === 'oz');
  if (pounds !== undefined && ounces !== undefined) {
    const drams = columns.find((column) => unitOf(column) === 'dr');
    const used = [pounds, ounces, ...(drams === undefined ? [] : [drams])];
    const units = { lb: pounds.index, oz: ounces.index, ...(drams === undefined ? {} : { dr: drams.index }) };
    return { weight: { units, whole: [], unit: null }, left: columns.filter((column) => !used.includes(column)) };
  }
  const whole = columns.filter(({ use }) => use.what !== 'net');
  const nets = columns.filter(({ use }) => use.what === 'net');
  if (whole.length > 0) {
    const chosen = whole.find(({ heading }) => /total/i.test(heading)) ?? whole[0]!;
    return {
      weight: { units: {}, whole: [chosen.index], unit: unitOf(chosen) ?? null },
      left: columns.filter((column) => column !== chosen),
    };
  }
  if (nets.length === 0) return { weight: null, left: [] };
  return { weight: { units: {}, whole: nets.map(({ index }) => index), unit: null }, left: [] };
}

/** The cells that make up the weight of a row. */
export function weightCells(sheet: PaperSheet, row: number, columns: WeightColumns): readonly PaperCell[] {
  return [...columns.whole, ...Object.values(columns.units)].map((column) => cellAt(sheet, row, column));
}

/** Reads the weight of a row, with what the club has said of such sheets. */
export function weightOfRow(
  sheet: PaperSheet,
  row: number,
  columns: WeightColumns,
  answers: WeightAnswers,
): SheetWeight {
  const { lb, oz, dr } = columns.units;
  if (lb !== undefined && oz !== undefined) {
    const cells = [lb, oz, dr].map((column) => (column === undefined ? EMPTY_CELL : cellAt(sheet, row, column)));
    const unworked = cells.find(({ isUnworked }) => isUnworked === true);
    if (unworked !== undefined) return readSheetWeight(unworked, null);
    return weightOfColumns(cells[0]!.text, cells[1]!.text, cells[2]!.text);
  }
  const read = columns.whole.map((column) => oneCell(cellAt(sheet, row, column), columns.unit, answers));
  return read.length === 1 ? read[0]! : sumOf(read);
}

function oneCell(cell: PaperCell, unit: WeightUnit | null, answers: WeightAnswers): SheetWeight {
  if ((unit === 'kg' || unit === 'g') && /^\d+([.,]\d+)?$/.test(cell.text)) {
    return readSheetWeight({ ...cell, text: `${cell.text} ${unit}` }, null);
  }
  const isTen = answers.decimals === 'pounds-ounces' && answers.pointOne === 'ten' && isPointOne(cell);
  const weight = readSheetWeight(isTen ? { ...cell, text: `${cell.text}0` } : cell, answers.decimals);
  if (weight.kind !== 'date' || answers.dates === null) return weight;
  return answers.dates === 'pounds-ounces'
    ? weightOfDate(weight.day)
    : { kind: 'unreadable', why: 'the spreadsheet has made a date of it' };
}

/** A number shown with .1 may have been .10 before the spreadsheet dropped the nought. */
export function isPointOne({ kind, text }: PaperCell): boolean {
  return kind === 'number' && /^\d+\.1$/.test(text);
}

/** Nets that were weighed apart. An empty net is none; all of them empty is the mark of the row. */
function sumOf(nets: readonly SheetWeight[]): SheetWeight {
  const bad = nets.find(({ kind }) => kind !== 'weight' && kind !== 'mark');
  if (bad !== undefined) return bad;
  const weights = nets.flatMap((net) => (net.kind === 'weight' ? [net] : []));
  if (weights.length === 0) return nets[0]!;
  if (weights.length === 1) return weights[0]!;
  const grams = weights.reduce((sum, net) => sum + net.grams, 0);
  return { kind: 'weight', grams, written: `${Number((grams / 1000).toFixed(6))} kg` };
}
