import { GRAMS_PER_DRAM, GRAMS_PER_OUNCE, GRAMS_PER_POUND, parseWeight } from '../../../domain/weight.ts';
import type { PaperCell } from '../paper.ts';

/** What a bare decimal of a sheet means: `23.8` is 23 lb 8 oz, 23.8 lb or 23.8 kg. The club says which. */
export type DecimalReading = 'pounds-ounces' | 'pounds' | 'kilograms';

/** What a weight's cell holds. `mark` is a word or sign whose meaning the club has to give. */
export type SheetWeight =
  | {
      readonly kind: 'weight';
      readonly grams: number /** As `sessions.csv` writes it, nothing rounded. */;
      readonly written: string;
    }
  | { readonly kind: 'mark'; readonly mark: string }
  /** Needs to know what bare decimals mean. */
  | { readonly kind: 'decimal'; readonly text: string }
  /** A spreadsheet took pounds and ounces for a date. */
  | { readonly kind: 'date'; readonly day: string; readonly text: string }
  | { readonly kind: 'unreadable'; readonly why: string };

const POUNDS_OUNCES =
  /^(\d{1,4})\s*(?:-|\/|lbs?\.?)\s*(\d{1,2})(?:\s*(?:-|\/|ozs?\.?)\s*(\d{1,2}))?\s*(?:ozs?\.?|drs?\.?|drams?\.?)?$/i;
const DECIMAL = /^(\d{1,5})[.,](\d{1,3})$/;
const WHOLE = /^\d{1,5}$/;
const WITH_UNIT = /^(\d{1,6})(?:[.,](\d{1,3}))?\s*(kgs?|kilos?|g|grams?|lbs?|ozs?)\.?$/i;
/** What a date in a column of weights was before the spreadsheet changed it: `4-05` became 4 May. */
const POUNDS_OF_DATE = /^\d{4}-(\d{2})-(\d{2})$/;

/** An empty cell counts as a mark too: it may mean a DNW. */
export const EMPTY_MARK = '(empty)';

/**
 * Reads the cell of a weight as result sheets write it: `23-08`, `23lb8`, `23lb 8oz`, `23/8`, `23.8`, `23,8`, `7,43 kg`.
 * A bare decimal is read by `decimals`, and asked about where that is not settled yet.
 */
export function readSheetWeight(cell: PaperCell, decimals: DecimalReading | null): SheetWeight {
  const { text } = cell;
  if (text === '') return { kind: 'mark', mark: EMPTY_MARK };
  if (cell.isUnworked === true)
    return {
      kind: 'unreadable',
      why: 'a formula whose value was never worked out: open the workbook in a spreadsheet program and save it',
    };
  if (cell.kind === 'date') return { kind: 'date', day: cell.day ?? '', text };
  if (/^0+(?:[-./,]0+)*$/.test(text)) return { kind: 'mark', mark: '0' };
  const pair = POUNDS_OUNCES.exec(text);
  if (pair !== null) return poundsOunces(Number(pair[1]), Number(pair[2]), Number(pair[3] ?? 0));
  const unit = WITH_UNIT.exec(text);
  if (unit !== null) return withUnit(`${unit[1]}${unit[2] === undefined ? '' : `.${unit[2]}`}`, unit[3]!.toLowerCase());
  const decimal = DECIMAL.exec(text);
  if (decimal !== null || WHOLE.test(text)) {
    if (decimals === null) return { kind: 'decimal', text };
    const [whole, fraction] = [decimal?.[1] ?? text, decimal?.[2]];
    if (decimals === 'pounds-ounces') return poundsOunces(Number(whole), Number(fraction ?? 0), 0);
    return withUnit(fraction === undefined ? whole : `${whole}.${fraction}`, decimals === 'pounds' ? 'lb' : 'kg');
  }
  if (!/\d/.test(text) && text.length <= 24) return { kind: 'mark', mark: text.toUpperCase() };
  return { kind: 'unreadable', why: `"${text}" is no weight` };
}

/** A weight from a column of pounds and one of ounces (and one of drams). */
export function weightOfColumns(pounds: string, ounces: string, drams = ''): SheetWeight {
  const cells = [pounds, ounces, drams];
  const marks = cells.filter((text) => text !== '' && !/^\d+(\.\d+)?$/.test(text));
  if (marks.length > 0) return { kind: 'mark', mark: marks[0]!.toUpperCase() };
  if (cells.every((text) => text === '')) return { kind: 'mark', mark: EMPTY_MARK };
  if (cells.every((text) => Number(text) === 0)) return { kind: 'mark', mark: '0' };
  if (/\./.test(pounds)) return { kind: 'unreadable', why: `"${pounds}" pounds beside a column of ounces` };
  if (/\./.test(ounces)) {
    const grams = Number(pounds) * GRAMS_PER_POUND + Number(ounces) * GRAMS_PER_OUNCE;
    return Number(ounces) >= 16
      ? tooManyOunces(ounces)
      : { kind: 'weight', grams, written: `${Number(pounds)} lb ${ounces} oz` };
  }
  return poundsOunces(Number(pounds), Number(ounces), Number(drams));
}

/** The pounds and ounces a spreadsheet made a date of (`4-05`, the day first). */
export function weightOfDate(day: string): SheetWeight {
  const parts = POUNDS_OF_DATE.exec(day);
  if (parts === null) return { kind: 'unreadable', why: 'a date' };
  return poundsOunces(Number(parts[2]), Number(parts[1]), 0);
}

function poundsOunces(pounds: number, ounces: number, drams: number): SheetWeight {
  if (ounces > 15) return tooManyOunces(String(ounces));
  if (drams > 15) return { kind: 'unreadable', why: `${drams} drams, and 16 are an ounce` };
  const grams = pounds * GRAMS_PER_POUND + ounces * GRAMS_PER_OUNCE + drams * GRAMS_PER_DRAM;
  const written = `${pounds}-${String(ounces).padStart(2, '0')}${drams === 0 ? '' : `-${drams}`}`;
  return grams === 0 ? { kind: 'mark', mark: '0' } : { kind: 'weight', grams, written };
}

function tooManyOunces(ounces: string): SheetWeight {
  return { kind: 'unreadable', why: `${ounces} ounces, and 16 are a pound` };
}

function withUnit(number: string, unit: string): SheetWeight {
  const word = unit.startsWith('k') ? 'kg' : unit.startsWith('g') ? 'g' : unit.startsWith('o') ? 'oz' : 'lb';
  const written = `${number} ${word}`;
  const grams = parseWeight(written, 'kg');
  if (!grams.ok) return { kind: 'unreadable', why: `"${written}" is no weight` };
  return grams.value === 0 ? { kind: 'mark', mark: '0' } : { kind: 'weight', grams: grams.value, written };
}
