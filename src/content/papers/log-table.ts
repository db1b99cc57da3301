import { parse } from 'csv-parse/sync';
import { csvLine } from '../intake/csv-line.ts';

/** A table of the log as it stands in its file, with the lines of rows nobody touches kept byte for byte. */
export class LogTable {
  readonly #columns: string[];
  #rows: { readonly cells: readonly string[]; readonly raw: string | null }[];
  readonly #lineEnd: string;
  readonly #mark: string;
  #isWidened = false;

  /** @param text the file, or null where there is none; then the table has the columns given alone */
  constructor(text: string | null, columns: readonly string[]) {
    const written = text === null || text.trim() === '' ? `${columns.join(',')}\n` : text;
    this.#mark = written.startsWith('\ufeff') ? '\ufeff' : '';
    this.#lineEnd = written.includes('\r\n') ? '\r\n' : '\n';
    const records = parse(written.replace(/^\ufeff/, ''), {
      raw: true,
      relax_column_count: true,
      record_delimiter: ['\r\n', '\n', '\r'],
      trim: true,
    }) as unknown as readonly { readonly record: readonly string[]; readonly raw: string }[];
    this.#columns = [...(records[0]?.record ?? columns)];
    this.#rows = records.slice(1).map(({ record, raw }) => ({ cells: record, raw: raw.replace(/[\r\n]+$/, '') }));
  }

  /** Makes sure the table has these columns; missing ones come last. */
  need(columns: readonly string[]): void {
    for (const column of columns) {
      if (this.#columns.includes(column)) continue;
      this.#columns.push(column);
      this.#isWidened = true;
    }
  }

  /** Rows whose cells pass, as columns and texts. */
  rows(): readonly Readonly<Record<string, string>>[] {
    return this.#rows.map(({ cells }) =>
      Object.fromEntries(this.#columns.map((column, index) => [column, cells[index] ?? ''])),
    );
  }

  /** Puts rows in place of those that pass `isOld`: where the first of them stood, or at the end. Equal rows keep their line. */
  replace(
    isOld: (row: Readonly<Record<string, string>>) => boolean,
    rows: readonly Readonly<Record<string, string>>[],
  ): void {
    const all = this.rows();
    const first = all.findIndex(isOld);
    const old = this.#rows.filter((_, index) => isOld(all[index]!));
    const fresh = rows.map((row) => {
      const cells = this.#columns.map((column) => row[column] ?? '');
      const same = old.find((known) => this.#columns.every((_, index) => (known.cells[index] ?? '') === cells[index]));
      return same ?? { cells, raw: null };
    });
    const before = this.#rows.filter((_, index) => !isOld(all[index]!) && (first === -1 || index < first));
    const after = first === -1 ? [] : this.#rows.filter((_, index) => !isOld(all[index]!) && index >= first);
    this.#rows = [...before, ...fresh, ...after];
  }

  /** Puts another text in place of one in a column; lines without it stay as they are. */
  change(column: string, from: string, to: string): void {
    const index = this.#columns.indexOf(column);
    this.#rows = this.#rows.map((row) =>
      row.cells[index] === from ? { cells: row.cells.with(index, to), raw: null } : row,
    );
  }

  /** The file as it would be. */
  text(): string {
    const lines = this.#rows.map(({ cells, raw }) =>
      raw !== null && !this.#isWidened ? raw : csvLine(this.#columns.map((_, index) => cells[index] ?? '')),
    );
    return `${this.#mark}${[csvLine(this.#columns), ...lines].join(this.#lineEnd)}${this.#lineEnd}`;
  }
}
