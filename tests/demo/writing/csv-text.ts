/** A value of a cell; an empty cell where it is left out. */
export type Cell = string | number | undefined;

/** Comma-separated text with a header line (RFC 4180), lines ended by a line feed. */
export function csvText(header: readonly string[], rows: readonly (readonly Cell[])[]): string {
  return `${[header, ...rows].map((row) => row.map(cellText).join(',')).join('\n')}\n`;
}

function cellText(cell: Cell): string {
  const text = cell === undefined ? '' : String(cell);
  return /[",\n\r]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
