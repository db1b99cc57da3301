/**
 * CSV as spreadsheets read it (RFC 4180). A cell that a spreadsheet would take for a formula is led by an apostrophe,
 * since the texts in it come from the bank.
 */
export function csvText(header: readonly string[], rows: readonly (readonly (string | number | null)[])[]): string {
  return [header, ...rows].map((row) => `${row.map(csvCell).join(',')}\r\n`).join('');
}

function csvCell(value: string | number | null): string {
  if (value === null) return '';
  if (typeof value === 'number') return String(value);
  const safe = /^[=+\-@\t\r]/.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
