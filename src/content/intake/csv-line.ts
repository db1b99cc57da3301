import { withFormulaGuard } from '../sources/formula-guard.ts';

/**
 * One line of CSV (RFC 4180): a field is put in quotes where it holds a comma, a quote, a line break or a blank at an end.
 * Text that a spreadsheet would run as a formula is guarded; figures, which may begin with a minus, are not.
 */
export function csvLine(fields: readonly string[]): string {
  return fields
    .map((field) => (/^-?\d/.test(field) ? field : withFormulaGuard(field)))
    .map((field) => (/[",\r\n]|^\s|\s$/.test(field) ? `"${field.replaceAll('"', '""')}"` : field))
    .join(',');
}
