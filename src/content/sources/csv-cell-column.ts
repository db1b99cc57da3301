/** The column (from 1) at which a cell of a CSV line begins; commas inside quotation marks divide nothing. */
export function cellColumn(line: string, cell: number): number {
  let column = 1;
  let isQuoted = false;
  let passed = 0;
  for (let i = 0; i < line.length && passed < cell; i++) {
    if (line[i] === '"') isQuoted = !isQuoted;
    else if (line[i] === ',' && !isQuoted) {
      passed++;
      column = i + 2;
    }
  }
  return column;
}
