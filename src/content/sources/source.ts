import type { Fault, Severity } from '../fault.ts';
import type { TextPlace } from './text-place.ts';

/** Steps from the top of a record to a value in it: names of fields and places in lists. */
export type FieldPath = readonly PropertyKey[];

/** Something read from a file that still knows where each of its fields stands. */
export interface Source {
  readonly file: string;
  /** Where the value stands; where there is none, the nearest thing around it. */
  readonly placeOf: (path: FieldPath) => TextPlace;
  /** Where the name of the field stands. */
  readonly nameplaceOf: (path: FieldPath) => TextPlace;
  /** The value as it is written; undefined where there is none. */
  readonly writtenAt: (path: FieldPath) => string | undefined;
}

/** A value of the domain with the record it was read from. */
export interface Placed<T> {
  readonly value: T;
  readonly source: Source;
}

/** What is wrong with one field; `faultAt` adds the place. */
export interface FieldFault {
  readonly rule: string;
  readonly sentence?: string;
  readonly found: string;
  readonly expected: string;
  readonly mend: string;
  readonly severity?: Severity;
}

/** A fault of one field of a source, an error unless it says otherwise. */
export function faultAt(source: Source, path: FieldPath, fault: FieldFault): Fault {
  const { severity = 'error' } = fault;
  const { line, column } = source.placeOf(path);
  return { file: source.file, line, column, field: fieldName(path), ...fault, severity };
}

/** A fault of a whole file. */
export function faultOfFile(file: string, fault: FieldFault, place: TextPlace = { line: 1, column: 1 }): Fault {
  const { rule, found, expected, mend, severity = 'error' } = fault;
  return { file, line: place.line, column: place.column, field: '', rule, found, expected, mend, severity };
}

/** A field as its writer names it: `hazards[0].kind`, counted from 0. */
export function fieldName(path: FieldPath): string {
  return path.reduce<string>((name, step) => {
    if (typeof step === 'number') return `${name}[${step}]`;
    return name === '' ? String(step) : `${name}.${String(step)}`;
  }, '');
}
