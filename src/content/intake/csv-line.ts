/** One line of CSV (RFC 4180): a field is put in quotes where it holds a comma, a quote, a line break or a blank at an end. */
export function csvLine(fields: readonly string[]): string {
  return fields.map((field) => (/[",\r\n]|^\s|\s$/.test(field) ? `"${field.replaceAll('"', '""')}"` : field)).join(',');
}
