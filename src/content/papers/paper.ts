/** One cell of a club's paper: a result sheet as it was typed, whatever program it came from. */
export interface PaperCell {
  /** As the sheet shows it, blanks at the ends taken off; empty where there is nothing. */
  readonly text: string;
  /** `number` and `date` only where the sheet itself says so; text files hold text alone. */
  readonly kind: 'empty' | 'text' | 'number' | 'date';
  /** A date as YYYY-MM-DD; only of kind `date`. */
  readonly day?: string;
  /** Set on a formula whose value was never worked out by a spreadsheet. */
  readonly isUnworked?: boolean;
}

/** One table of a paper. Rows may be of unequal length. */
export interface PaperSheet {
  readonly name: string;
  readonly rows: readonly (readonly PaperCell[])[];
  /** Rows the spreadsheet hides, counted from 0. */
  readonly hiddenRows: ReadonlySet<number>;
  /** Cells that lie under a merged one, `row:column`, with the text of that one. */
  readonly merged: ReadonlyMap<string, string>;
}

/** A file of results as it came. */
export interface Paper {
  readonly file: string;
  readonly sheets: readonly PaperSheet[];
  /** What was seen on reading and is no fault: "took the values last worked out of 3 cells that point to another workbook". */
  readonly remarks: readonly string[];
}

/** A place in a paper and what could not be read there. */
export interface PaperFault {
  readonly file: string;
  readonly sheet?: string;
  /** Counted from 1, as a spreadsheet does. */
  readonly row?: number;
  readonly found: string;
  readonly expected: string;
  readonly mend: string;
}

export type PaperRead =
  | { readonly ok: true; readonly paper: Paper }
  | { readonly ok: false; readonly fault: PaperFault };

/** A file larger than this is no result sheet; from elsewhere, it could exhaust the machine. */
export const MAX_PAPER_BYTES = 20 * 1024 * 1024;

/** Rows and cells a paper may hold. */
export const MAX_PAPER_CELLS = 500_000;

export const EMPTY_CELL: PaperCell = { text: '', kind: 'empty' };

/** A cell of text. */
export function textCell(text: string): PaperCell {
  const trimmed = text.replace(/[\p{Cc}\p{Cf}\u00a0]+/gu, ' ').trim();
  return trimmed === '' ? EMPTY_CELL : { text: trimmed, kind: 'text' };
}

/** The cell of a place; empty where the row is shorter. */
export function cellAt(sheet: PaperSheet, row: number, column: number): PaperCell {
  return sheet.rows[row]?.[column] ?? EMPTY_CELL;
}
