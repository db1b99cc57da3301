import { hasResultHeadings } from './headings.ts';
import { MAX_PAPER_CELLS, type PaperRead, type PaperSheet, textCell } from './paper.ts';
import { splitTable } from './split-table.ts';
import { decodedText } from './text-encoding.ts';

/**
 * Reads a result sheet that is text: CSV with any of the usual delimiters, or pasted columns set apart by two blanks or
 * more. UTF-8, UTF-16 with its mark, else Windows-1252, which any old spreadsheet program writes.
 */
export function readTextPaper(file: string, bytes: Uint8Array): PaperRead {
  const text = decodedText(bytes);
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
  if (text.trim() === '') {
    return {
      ok: false,
      fault: { file, found: 'an empty file', expected: 'the results of a match', mend: 'Save the sheet again.' },
    };
  }
  const best = splitTable(text, hasResultHeadings);
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
