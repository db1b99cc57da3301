import type * as z from 'zod';
import type { Fault, LeftOut } from './fault.ts';
import { faultsOfIssues } from './schemas/read-fields.ts';
import type { CsvColumns } from './sources/csv-header.ts';
import { type CsvRow, MAX_BROKEN_ROWS, readCsvTable, tooManyBroken } from './sources/csv-table.ts';
import type { Source } from './sources/source.ts';

/** A row that was read, and the row it came from. */
export interface PlacedRow<T> {
  readonly value: T;
  readonly line: number;
  /** Made anew at each call: a log of a hundred thousand rows needs few of them. */
  readonly source: () => Source;
}

/** The cells of a row, by column. */
export type Cells = Readonly<Record<string, string>>;

export interface RowsRead<T> {
  readonly rows: readonly PlacedRow<T>[];
  /** The columns the file has; empty where it could not be read. */
  readonly columns: readonly string[];
  /** Whether rows may be missing that stand in the file: its faults say why. */
  readonly mayLackRows: boolean;
  /** The raw cells of rows that could not be read. */
  readonly unreadable: readonly CsvRow[];
  /** Of rows with a wrong cell or several, the cells that are right: what they name is checked in the same run. */
  readonly halfRead: readonly PlacedRow<Cells>[];
  readonly faults: readonly Fault[];
  readonly leftOut: readonly LeftOut[];
}

/** Reads every row of a CSV file by the schema of its rows; the schema's fields are the columns. */
export function readRows<T>(file: string, text: string, schema: z.ZodType<T>, columns: CsvColumns): RowsRead<T> {
  const { table, faults: tableFaults, leftOut } = readCsvTable(file, text, columns);
  if (table === null) {
    return { rows: [], columns: [], mayLackRows: true, unreadable: [], halfRead: [], faults: tableFaults, leftOut };
  }
  const faults: Fault[] = [...tableFaults];
  const rows: PlacedRow<T>[] = [];
  const unreadable: CsvRow[] = [...table.tornRows];
  const halfRead: PlacedRow<Cells>[] = [];
  let broken = 0;
  for (const row of table.rows) {
    if (broken === MAX_BROKEN_ROWS) {
      faults.push(tooManyBroken(file, row.line));
      break;
    }
    const result = schema.safeParse(row.cells);
    if (result.success) {
      rows.push({ value: result.data, line: row.line, source: () => table.sourceOf(row) });
    } else {
      broken++;
      unreadable.push(row);
      const wrong = new Set(result.error.issues.map(({ path }) => path[0]));
      const right = Object.fromEntries(Object.entries(row.cells).filter(([column]) => !wrong.has(column)));
      halfRead.push({ value: right, line: row.line, source: () => table.sourceOf(row) });
      for (const fault of faultsOfIssues(result.error.issues, schema, table.sourceOf(row))) faults.push(fault);
    }
  }
  return {
    rows,
    columns: table.columns,
    mayLackRows: table.mayLackRows || broken === MAX_BROKEN_ROWS,
    unreadable,
    halfRead,
    faults,
    leftOut,
  };
}
