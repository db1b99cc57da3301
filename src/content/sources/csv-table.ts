import { parse } from 'csv-parse/sync';
import type { Fault, LeftOut } from '../fault.ts';
import { cellPlace } from './csv-cell-place.ts';
import { type CsvColumns, headerFaults } from './csv-header.ts';
import { controlCharacterFaults, plainText } from './plain-text.ts';
import { faultOfFile, type Source } from './source.ts';
import type { TextPlace } from './text-place.ts';

/** One record of a table, its empty cells left out. */
export interface CsvRow {
  /** The line of the file on which the record begins. */
  readonly line: number;
  readonly cells: Readonly<Record<string, string>>;
}

export interface CsvTable {
  readonly file: string;
  readonly columns: readonly string[];
  readonly rows: readonly CsvRow[];
  /** Rows with a cell too many or too few, which have a fault: what their first cells say is most likely true. */
  readonly tornRows: readonly CsvRow[];
  /** Whether a quotation mark may have swallowed rows. */
  readonly mayLackRows: boolean;
  /** The row as a source whose fields are columns. */
  readonly sourceOf: (row: CsvRow) => Source;
}

export interface CsvRead {
  /** Null where the columns cannot be told. */
  readonly table: CsvTable | null;
  readonly faults: readonly Fault[];
  readonly leftOut: readonly LeftOut[];
}

interface RawRecord {
  readonly record: readonly string[];
  /** The line its last cell ends on. */
  readonly lines: number;
}

/** Reads a CSV file (RFC 4180) with a header line. Line ends of any kind and a byte order mark are accepted. Never throws. */
export function readCsvTable(file: string, fileText: string, columns: CsvColumns): CsvRead {
  const text = plainText(fileText);
  const characters = controlCharacterFaults(file, text);
  if (characters.length > 0) return { table: null, faults: characters, leftOut: [] };
  const { records, faults: quoteFaults } = split(file, text);
  const header = records[0];
  const lines = text.split('\n');
  const wrongHeader = headerFaults(file, lines, header?.record ?? [], columns);
  if (header === undefined || wrongHeader.some(({ rule }) => rule !== 'column-unknown')) {
    return { table: null, faults: [...wrongHeader, ...quoteFaults], leftOut: [] };
  }
  const names = header.record;
  const faults: Fault[] = [...wrongHeader, ...quoteFaults];
  const empty: number[] = [];
  const rows: CsvRow[] = [];
  const tornRows: CsvRow[] = [];
  const formulas = new Map<number, readonly number[]>();
  for (const { record, lines: lastLine } of records.slice(1)) {
    const line = lastLine - lineBreaksIn(record);
    if (tornRows.length === MAX_BROKEN_ROWS) {
      faults.push(tooManyBroken(file, line));
      break;
    }
    if (record.every((cell) => cell === '')) {
      // The end of the last line is no row.
      if (line < lines.length || record.length > 1) empty.push(line);
    } else if (record.length === names.length) {
      rows.push({ line, cells: cellsOf(record, names) });
      const column = record.findIndex(isFormula);
      if (column !== -1) formulas.set(column, [...(formulas.get(column) ?? []), line].slice(0, MAX_FORMULAS));
    } else {
      tornRows.push({ line, cells: cellsOf(record, names) });
      faults.push(wrongLength(file, line, record.length, names.length));
    }
  }
  for (const [column, at] of formulas)
    faults.push(formulaCells(file, at, names[column] ?? '', cellPlace(lines, at[0] ?? 1, column)));
  const sourceOf = (row: CsvRow): Source => {
    const place = (column: PropertyKey | undefined) => {
      const index = names.indexOf(String(column));
      return index === -1 ? { line: row.line, column: 1 } : cellPlace(lines, row.line, index);
    };
    return {
      file,
      placeOf: ([column]) => place(column),
      nameplaceOf: ([column]) => place(column),
      writtenAt: ([column]) => (column === undefined ? lines[row.line - 1] : row.cells[String(column)]),
    };
  };
  const table = {
    file,
    columns: names,
    rows,
    tornRows,
    mayLackRows: quoteFaults.length > 0 || tornRows.length === MAX_BROKEN_ROWS,
    sourceOf,
  };
  return { table, faults, leftOut: emptyRows(file, empty) };
}

/** What a formula begins with (OWASP, "CSV injection"): a figure may begin with a sign, too. */
function isFormula(cell: string): boolean {
  return /^(?:[=@\t\r]|[+-](?!\s*[\d.]))/.test(cell) && cell !== '-';
}

/** Where so many cells of one column are told, the rest is alike. */
const MAX_FORMULAS = 100;

function formulaCells(file: string, at: readonly number[], column: string, place: TextPlace): Fault {
  const many = at.length === MAX_FORMULAS ? `${MAX_FORMULAS} cells and more` : `${at.length} cells`;
  const fault: Omit<Fault, 'field'> = faultOfFile(
    file,
    {
      rule: 'cell-formula',
      found: `${at.length === 1 ? 'a cell' : `${many}, the first here,`} that a spreadsheet takes for a formula and runs`,
      expected: "text, led by an apostrophe where it begins with =, @, + or -: '=x",
      mend: 'If it is text, put an apostrophe in front. If nobody of the club wrote it, take it out, and ask where the file came from.',
      severity: 'warning',
    },
    place,
  );
  return { ...fault, field: column };
}

/** No more rows are wanted. */
class EnoughRows extends Error {}

function split(file: string, text: string): { records: readonly RawRecord[]; faults: readonly Fault[] } {
  const wrong = new Map<number, string>();
  const records: RawRecord[] = [];
  let torn = 0;
  const onSkip = (error: { code?: string; lines?: number } | undefined) => {
    const line = error?.lines ?? 1;
    if (error !== undefined && !wrong.has(line)) wrong.set(line, error.code ?? '');
    return undefined;
  };
  // The parser makes an error with its trace for each row of another length, and would keep them all.
  const { stackTraceLimit } = Error;
  Error.stackTraceLimit = 0;
  try {
    parse(text, {
      relax_column_count: true,
      record_delimiter: ['\n'],
      trim: true,
      skip_records_with_error: true,
      on_skip: onSkip,
      on_record: (record: string[], { lines }) => {
        records.push({ record, lines });
        if (record.length !== records[0]!.record.length && ++torn > MAX_BROKEN_ROWS) throw new EnoughRows();
        return undefined;
      },
    });
  } catch (error) {
    if (!(error instanceof EnoughRows)) wrong.set(1, '');
  } finally {
    Error.stackTraceLimit = stackTraceLimit;
  }
  const afterLastGood = (records.at(-1)?.lines ?? 0) + 1;
  const faults = [...wrong].map(([line, code]) => quoteFault(file, line, code, afterLastGood));
  return { records, faults };
}

function quoteFault(file: string, line: number, code: string, afterLastGood: number): Fault {
  const isOpen = code === 'CSV_QUOTE_NOT_CLOSED';
  return faultOfFile(
    file,
    {
      rule: isOpen ? 'csv-quote-open' : 'csv-quote',
      found: isOpen ? 'a quotation mark without its partner' : 'a quotation mark inside a cell',
      expected: 'cells with no quotation mark, or in quotation marks as a whole',
      mend: 'Put the cell in quotation marks and double those inside it ("a 12"" drop"), or take them out. Rows after it may be unread until then.',
    },
    // An open quote swallows all that follows: the place to look is the line after the last good one.
    { line: isOpen ? afterLastGood : line, column: 1 },
  );
}

function lineBreaksIn(record: readonly string[]): number {
  let count = 0;
  for (const cell of record) if (cell.includes('\n')) count += cell.split('\n').length - 1;
  return count;
}

function cellsOf(record: readonly string[], names: readonly string[]): Record<string, string> {
  const cells: Record<string, string> = {};
  for (let i = 0; i < names.length; i++) {
    const cell = record[i];
    if (cell !== undefined && cell !== '') cells[names[i]!] = cell;
  }
  return cells;
}

function wrongLength(file: string, line: number, found: number, expected: number): Fault {
  return faultOfFile(
    file,
    {
      rule: 'row-cells',
      found: `${found} ${found === 1 ? 'cell' : 'cells'}`,
      expected: `${expected} cells, one for each column of the first line`,
      mend:
        found > expected
          ? 'Put a cell that holds a comma in quotation marks, or delete the extra commas.'
          : 'Add the missing commas; a cell may be empty, but its comma stays.',
    },
    { line, column: 1 },
  );
}

/** Rows of one file that are told as broken; where there are more they are broken alike, and the first ones say how. */
export const MAX_BROKEN_ROWS = 5000;

/** Says that the rows of a file from a line on were not looked at. */
export function tooManyBroken(file: string, line: number): Fault {
  return faultOfFile(
    file,
    {
      rule: 'file-faults',
      found: `a row behind ${MAX_BROKEN_ROWS} broken ones`,
      expected: 'few broken rows in a file',
      mend: 'This row and those behind it were not looked at. Mend the first ones, which are most likely broken alike, and run this again.',
    },
    { line, column: 1 },
  );
}

/** Rows without anything in them, told once for each run of them. */
function emptyRows(file: string, lines: readonly number[]): readonly LeftOut[] {
  const runs: { first: number; last: number }[] = [];
  for (const line of lines) {
    const run = runs.at(-1);
    if (run !== undefined && line === run.last + 1) run.last = line;
    else runs.push({ first: line, last: line });
  }
  return runs.map(({ first, last }) => ({
    file,
    line: first,
    what: first === last ? 'an empty row' : `${last - first + 1} empty rows`,
    why: 'There is nothing in it.',
  }));
}
