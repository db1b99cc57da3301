import { parse } from 'csv-parse/sync';
import type { Fault, LeftOut } from '../fault.ts';
import { cellColumn } from './csv-cell-column.ts';
import { type CsvColumns, headerFaults } from './csv-header.ts';
import { controlCharacterFaults, plainText } from './plain-text.ts';
import { faultOfFile, type Source } from './source.ts';

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
  readonly info: { readonly lines: number };
}

/** Reads a CSV file (RFC 4180) with a header line. Line ends of any kind and a byte order mark are accepted. Never throws. */
export function readCsvTable(file: string, fileText: string, columns: CsvColumns): CsvRead {
  const text = plainText(fileText);
  const characters = controlCharacterFaults(file, text);
  if (characters.length > 0) return { table: null, faults: characters, leftOut: [] };
  const { records, faults: quoteFaults } = split(file, text);
  const header = records[0];
  const lines = text.split('\n');
  const wrongHeader = headerFaults(file, lines[0] ?? '', header?.record ?? [], columns);
  if (header === undefined || wrongHeader.some(({ rule }) => rule !== 'column-unknown')) {
    return { table: null, faults: [...wrongHeader, ...quoteFaults], leftOut: [] };
  }
  const names = header.record;
  const faults: Fault[] = [...wrongHeader, ...quoteFaults];
  const empty: number[] = [];
  const rows: CsvRow[] = [];
  for (const { record, info } of records.slice(1)) {
    const line = info.lines - lineBreaksIn(record);
    if (record.every((cell) => cell === '')) {
      // The end of the last line is no row.
      if (line < lines.length || record.length > 1) empty.push(line);
    } else if (record.length === names.length) rows.push({ line, cells: cellsOf(record, names) });
    else faults.push(wrongLength(file, line, record.length, names.length));
  }
  const sourceOf = (row: CsvRow): Source => {
    const place = (column: PropertyKey | undefined) => {
      const index = names.indexOf(String(column));
      return { line: row.line, column: index === -1 ? 1 : cellColumn(lines[row.line - 1] ?? '', index) };
    };
    return {
      file,
      placeOf: ([column]) => place(column),
      nameplaceOf: ([column]) => place(column),
      writtenAt: ([column]) => (column === undefined ? lines[row.line - 1] : row.cells[String(column)]),
    };
  };
  return { table: { file, columns: names, rows, sourceOf }, faults, leftOut: emptyRows(file, empty) };
}

function split(file: string, text: string): { records: readonly RawRecord[]; faults: readonly Fault[] } {
  const faults: Fault[] = [];
  let records: readonly RawRecord[] = [];
  const onSkip = (error: { code?: string; lines?: number } | undefined) => {
    if (error !== undefined) faults.push(quoteFault(file, text, error.code ?? '', error.lines ?? 1));
    return undefined;
  };
  try {
    records = parse(text, {
      info: true,
      relax_column_count: true,
      record_delimiter: ['\n'],
      trim: true,
      skip_records_with_error: true,
      on_skip: onSkip,
    }) as unknown as readonly RawRecord[];
  } catch {
    faults.push(quoteFault(file, text, '', 1));
  }
  const last = records.at(-1)?.info.lines ?? 0;
  // An open quote swallows all that follows: the place to look is the line after the last good one.
  return {
    records,
    faults: faults
      .map((fault) => (fault.rule === 'csv-quote-open' ? { ...fault, line: last + 1 } : fault))
      .filter(({ line }, index, all) => all.findIndex((other) => other.line === line) === index),
  };
}

function quoteFault(file: string, text: string, code: string, line: number): Fault {
  const isOpen = code === 'CSV_QUOTE_NOT_CLOSED';
  return faultOfFile(
    file,
    {
      rule: isOpen ? 'csv-quote-open' : 'csv-quote',
      found: isOpen ? 'a quotation mark without its partner' : 'a quotation mark inside a cell',
      expected: 'cells with no quotation mark, or in quotation marks as a whole',
      mend: 'Put the cell in quotation marks and double those inside it ("a 12"" drop"), or take them out. Rows after it may be unread until then.',
    },
    { line: Math.min(line, text.split('\n').length), column: 1 },
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
    const cell = record[i]!;
    if (cell !== '') cells[names[i]!] = cell;
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
