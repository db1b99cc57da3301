import { didYouMean, listed } from '../did-you-mean.ts';
import type { Fault } from '../fault.ts';
import { cellPlace } from './csv-cell-place.ts';
import { type FieldFault, faultOfFile } from './source.ts';
import { shown } from './text-place.ts';

/** The columns a kind of file has. */
export interface CsvColumns {
  readonly required: readonly string[];
  readonly optional: readonly string[];
}

const OTHER_DELIMITERS: Readonly<Record<string, string>> = { ';': 'semicolons', '\t': 'tabs', '|': 'upright strokes' };

/** What is wrong with the head of a CSV file: its delimiter, a title above the names of the columns, or columns that are missing, doubled or unknown. */
export function headerFaults(
  file: string,
  lines: readonly string[],
  names: readonly string[],
  columns: CsvColumns,
): readonly Fault[] {
  const line = lines[0] ?? '';
  const known = [...columns.required, ...columns.optional];
  if (names.every((name) => name === '')) return [noHeader(file, known)];
  for (const [delimiter, word] of Object.entries(OTHER_DELIMITERS)) {
    const parts = line.split(delimiter).map((part) => part.trim().replace(/^"|"$/g, ''));
    const isDelimiter = parts.length > names.length && parts.some((part) => known.includes(part));
    if (isDelimiter) return [otherDelimiter(file, word)];
  }
  if (!names.some((name) => known.includes(name))) {
    const below = titledHeader(lines, known);
    if (below !== null) return [titleAbove(file, line, below)];
  }
  const faults = names.flatMap((name, index) => {
    const at = (fault: FieldFault) => [{ ...faultOfFile(file, fault, cellPlace([line], 1, index)), field: name }];
    if (name === '') return at(UNNAMED);
    if (names.indexOf(name) < index) return at(doubled(name));
    return known.includes(name) ? [] : at(unknown(name, known));
  });
  const missing = columns.required.filter((name) => !names.includes(name));
  return [...faults, ...missing.map((name) => ({ ...faultOfFile(file, missingColumn(name)), field: name }))];
}

/** The line of the columns' names below a title, counted from 1, and what divides them; null where the first lines hold none. */
function titledHeader(
  lines: readonly string[],
  known: readonly string[],
): { line: number; word: string | null } | null {
  for (let index = 1; index < Math.min(lines.length, 6); index++) {
    for (const delimiter of [',', ...Object.keys(OTHER_DELIMITERS)]) {
      const parts = (lines[index] ?? '').split(delimiter).map((part) => part.trim().replace(/^"|"$/g, ''));
      if (parts.filter((part) => known.includes(part)).length >= 2) {
        return { line: index + 1, word: OTHER_DELIMITERS[delimiter] ?? null };
      }
    }
  }
  return null;
}

function titleAbove(file: string, title: string, { line, word }: { line: number; word: string | null }): Fault {
  const delimiter = word === null ? '' : ` Then save it as CSV with commas between the columns: it has ${word}.`;
  return faultOfFile(file, {
    rule: 'csv-title',
    found: shown(title),
    expected: `the names of the columns in the first line; they stand in line ${line}`,
    mend: `Delete the ${line === 2 ? 'line' : `${line - 1} lines`} above the names of the columns.${delimiter}`,
  });
}

function noHeader(file: string, known: readonly string[]): Fault {
  return faultOfFile(file, {
    rule: 'csv-header',
    found: 'no first line with the names of the columns',
    expected: listed(known, 20),
    mend: 'Write the names of the columns, divided by commas, into the first line.',
  });
}

function otherDelimiter(file: string, word: string): Fault {
  return faultOfFile(file, {
    rule: 'csv-delimiter',
    found: `${word} between the columns`,
    expected: 'commas',
    mend: `A spreadsheet has saved it with ${word}. Save it as CSV again and choose the comma as the separator, with decimal points, not decimal commas.`,
  });
}

const UNNAMED: FieldFault = {
  rule: 'column-unnamed',
  found: 'a column without a name',
  expected: 'a name above each column',
  mend: 'Delete the empty column, or name it.',
};

function doubled(name: string): FieldFault {
  return {
    rule: 'column-duplicate',
    found: `the column ${shown(name)} a second time`,
    expected: 'each column once',
    mend: 'Keep one of the two and delete the other.',
  };
}

function unknown(name: string, known: readonly string[]): FieldFault {
  return {
    rule: 'column-unknown',
    found: `the column ${shown(name)}`,
    expected: `one of ${listed(known, 20)}`,
    mend: didYouMean(name, known, 'Delete the column, or move what it says to a column this guide reads.'),
  };
}

function missingColumn(name: string): FieldFault {
  return {
    rule: 'column-missing',
    found: 'no such column',
    expected: `a column ${name}`,
    mend: 'Add it to the first line, and its cells to the rows.',
  };
}
