import { parse } from 'csv-parse/sync';
import { hasResultHeadings } from './headings.ts';
import { MAX_PAPER_CELLS, type PaperRead, type PaperSheet, textCell } from './paper.ts';

const DELIMITERS = ['\t', ';', ',', '|'] as const;

/**
 * Reads a result sheet that is text: CSV with any of the usual delimiters, or pasted columns set apart by two blanks or
 * more. UTF-8, UTF-16 with its mark, else Windows-1252, which any old spreadsheet program writes.
 */
export function readTextPaper(file: string, bytes: Uint8Array): PaperRead {
  const text = decoded(bytes).replaceAll(/\r\n?/g, '\n');
  if (text.includes('\u0000')) {
    return {
      ok: false,
      fault: {
        file,
        found: 'a file that is neither text nor a workbook',
        expected: 'XLSX, ODS, CSV or plain text',
        mend: 'Save it from the program it came from as XLSX or CSV. A picture or a PDF has to be typed.',
      },
    };
  }
  const layouts = [...DELIMITERS.map((delimiter) => split(text, delimiter)), inColumns(text)];
  const best = layouts.find((rows) => rows.some(hasResultHeadings)) ?? layouts.at(-1)!;
  if (best.reduce((sum, row) => sum + row.length, 0) > MAX_PAPER_CELLS) {
    return {
      ok: false,
      fault: {
        file,
        found: `more than ${MAX_PAPER_CELLS} cells`,
        expected: 'the results of a match or a season',
        mend: 'Cut the file into one a season.',
      },
    };
  }
  const sheet: PaperSheet = {
    name: '',
    rows: best.map((row) => row.map(textCell)),
    hiddenRows: new Set(),
    merged: new Map(),
  };
  return { ok: true, paper: { file, sheets: [sheet], remarks: [] } };
}

function decoded(bytes: Uint8Array): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
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
