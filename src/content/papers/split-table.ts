import { parse } from 'csv-parse/sync';

const DELIMITERS = ['\t', ';', ',', '|'] as const;

/**
 * Splits a text into rows and cells by whichever delimiter makes a row of headings of it: tab, semicolon, comma, bar, or
 * two blanks and more, as in pasted columns.
 */
export function splitTable(text: string, isHead: (row: readonly string[]) => boolean): readonly (readonly string[])[] {
  const plain = text.replaceAll(/\r\n?/g, '\n');
  const layouts = [...DELIMITERS.map((delimiter) => split(plain, delimiter)), inColumns(plain)];
  return layouts.find((rows) => rows.some(isHead)) ?? layouts.at(-1)!;
}

function split(text: string, delimiter: string): readonly (readonly string[])[] {
  try {
    return parse(text, {
      delimiter,
      record_delimiter: ['\n'],
      relax_column_count: true,
      relax_quotes: true,
      skip_empty_lines: false,
    });
  } catch {
    // An open quotation mark: the lines themselves still tell.
    return text.split('\n').map((line) => line.split(delimiter));
  }
}

function inColumns(text: string): readonly (readonly string[])[] {
  return text.split('\n').map((line) => line.trim().split(/\s{2,}/));
}
