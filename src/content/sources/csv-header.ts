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

/** What is wrong with the first line of a CSV file: its delimiter, or columns that are missing, doubled or unknown. */
export function headerFaults(
  file: string,
  line: string,
  names: readonly string[],
  columns: CsvColumns,
): readonly Fault[] {
  const known = [...columns.required, ...columns.optional];
  if (names.every((name) => name === '')) return [noHeader(file, known)];
  for (const [delimiter, word] of Object.entries(OTHER_DELIMITERS)) {
    const parts = line.split(delimiter).map((part) => part.trim().replace(/^"|"$/g, ''));
    const isDelimiter = parts.length > names.length && parts.some((part) => known.includes(part));
    if (isDelimiter) return [otherDelimiter(file, word)];
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
