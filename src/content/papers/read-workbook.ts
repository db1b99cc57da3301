import * as XLSX from '@e965/xlsx';
import { countWords } from '../../domain/count-words.ts';
import { boundedArchive, isArchive } from './bounded-archive.ts';
import { EMPTY_CELL, MAX_PAPER_CELLS, type PaperCell, type PaperRead, type PaperSheet, textCell } from './paper.ts';

/**
 * Reads a workbook (XLSX or ODS) into plain cells: values as last worked out, never a formula run, never another file
 * opened. Dates become days in both of the date systems that spreadsheets count in (from 1900 and from 1904).
 */
export function readWorkbook(file: string, bytes: Uint8Array): PaperRead {
  const refuse = (found: string, mend: string): PaperRead => ({
    ok: false,
    fault: { file, found, expected: 'a workbook of results', mend },
  });
  const archive = isArchive(bytes) ? boundedArchive(bytes) : null;
  if (archive === null) {
    return refuse(
      'a workbook that is damaged or unpacks to more than 100 MB',
      'Open it in a spreadsheet program and save the sheet of the match alone as CSV.',
    );
  }
  let book: XLSX.WorkBook;
  try {
    book = XLSX.read(archive, {
      type: 'array',
      cellNF: true,
      cellStyles: true,
      sheetStubs: true,
      cellHTML: false,
      bookVBA: false,
    });
  } catch {
    return refuse(
      'a workbook that cannot be read (damaged, or locked by a password)',
      'Take the password off, or save it as CSV.',
    );
  }
  const from1904 = book.Workbook?.WBProps?.date1904 === true;
  const sheets: PaperSheet[] = [];
  let cells = 0;
  let links = 0;
  for (const name of book.SheetNames) {
    const sheet = book.Sheets[name];
    if (sheet?.['!ref'] === undefined) continue;
    const range = XLSX.utils.decode_range(sheet['!ref']);
    cells += (range.e.r + 1) * (range.e.c + 1);
    if (cells > MAX_PAPER_CELLS) {
      return refuse(`a workbook of more than ${MAX_PAPER_CELLS} cells`, 'Save the sheet of the match alone as CSV.');
    }
    const rows = Array.from({ length: range.e.r + 1 }, (_, row) =>
      Array.from({ length: range.e.c + 1 }, (_, column) => {
        const cell = sheet[XLSX.utils.encode_cell({ r: row, c: column })] as XLSX.CellObject | undefined;
        if (cell?.f?.includes('[') === true) links += 1;
        return paperCell(cell, from1904);
      }),
    );
    sheets.push({ name: textCell(name).text, rows, hiddenRows: hiddenRows(sheet), merged: mergedText(sheet, rows) });
  }
  const remarks =
    links === 0
      ? []
      : [
          `${file}: ${countWords(links, 'cell')} with a value from another workbook: the value last worked out was read`,
        ];
  return { ok: true, paper: { file, sheets, remarks } };
}

function paperCell(cell: XLSX.CellObject | undefined, from1904: boolean): PaperCell {
  if (cell === undefined) return EMPTY_CELL;
  if (cell.t === 'z' || cell.v === undefined) {
    return cell.f === undefined ? EMPTY_CELL : { ...textCell(`=${cell.f}`), isUnworked: true };
  }
  if (cell.t === 'n' && typeof cell.v === 'number') {
    if (cell.z !== undefined && XLSX.SSF.is_date(String(cell.z))) {
      const date = XLSX.SSF.parse_date_code(cell.v, { date1904: from1904 }) as {
        y: number;
        m: number;
        d: number;
      } | null;
      if (date !== null) return { text: cell.w?.trim() ?? dayOf(date), kind: 'date', day: dayOf(date) };
    }
    return { text: (cell.w ?? String(cell.v)).trim(), kind: 'number' };
  }
  if (cell.t === 'd') {
    const day = new Date(cell.v as Date | string).toISOString().slice(0, 10);
    return { text: cell.w?.trim() ?? day, kind: 'date', day };
  }
  // An error such as #REF! is shown as it stands, so that whoever reads the question sees it.
  return textCell(cell.t === 'e' ? (cell.w ?? '#ERROR') : String(cell.v));
}

function dayOf({ y, m, d }: { y: number; m: number; d: number }): string {
  return `${String(y).padStart(4, '0')}-${String(m).padStart(2, '0')}-${String(d).padStart(2, '0')}`;
}

function hiddenRows(sheet: XLSX.WorkSheet): ReadonlySet<number> {
  return new Set((sheet['!rows'] ?? []).flatMap((row, index) => (row?.hidden === true ? [index] : [])));
}

function mergedText(sheet: XLSX.WorkSheet, rows: readonly (readonly PaperCell[])[]): ReadonlyMap<string, string> {
  const merged = new Map<string, string>();
  for (const { s, e } of sheet['!merges'] ?? []) {
    const text = rows[s.r]?.[s.c]?.text ?? '';
    // A whole column may be merged: only what the sheet holds counts.
    for (let row = s.r; row <= Math.min(e.r, rows.length - 1); row++) {
      for (let column = s.c; column <= Math.min(e.c, (rows[row]?.length ?? 0) - 1); column++) {
        if (row !== s.r || column !== s.c) merged.set(`${row}:${column}`, text);
      }
    }
  }
  return merged;
}
