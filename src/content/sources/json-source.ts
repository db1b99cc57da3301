import type { Fault } from '../fault.ts';
import { jsonPlaces } from './json-places.ts';
import { type JsonScan, MAX_LEVELS, scanJson } from './json-scan.ts';
import { lineIndex } from './line-index.ts';
import { controlCharacterFaults, hiddenCharacterIn, hiddenCharacterRule, plainText } from './plain-text.ts';
import { type FieldPath, faultAt, faultOfFile, type Source } from './source.ts';
import { FILE_START, shown } from './text-place.ts';

export interface JsonSource extends Source {
  readonly value: unknown;
}

interface JsonRead {
  readonly source: JsonSource | null;
  readonly faults: readonly Fault[];
}

/** Doubled members and hidden characters told of one file; a map that has more was written by a broken program. */
const MAX_TOLD = 200;

/** Reads JSON. Places are looked up only when something asks for one: a map of 20,000 points seldom needs any. Never throws. */
export function readJson(file: string, fileText: string): JsonRead {
  const text = plainText(fileText);
  const characters = controlCharacterFaults(file, text);
  if (characters.length > 0) return { source: null, faults: characters };
  const scan = scanJson(text);
  if (scan.brokenAt !== null) return { source: null, faults: [syntaxFault(file, text, scan.brokenAt)] };
  if (scan.tooDeepAt !== null) return { source: null, faults: [tooDeepFault(file, text, scan.tooDeepAt)] };
  const value: unknown = JSON.parse(text);
  let places: Source | undefined;
  const lazily = (): Source => {
    places ??= jsonPlaces(file, text);
    return places;
  };
  const source: JsonSource = {
    file,
    value,
    placeOf: (path) => lazily().placeOf(path),
    nameplaceOf: (path) => lazily().nameplaceOf(path),
    writtenAt: (path) => lazily().writtenAt(path),
  };
  // Only an escape can hide one here: those that stand in the file as they are were looked for above.
  const hidden = text.includes('\\u') ? hiddenCharacterFaults(source) : [];
  return { source, faults: [...doubledFaults(file, text, scan), ...hidden] };
}

function doubledFaults(file: string, text: string, { doubled }: JsonScan): readonly Fault[] {
  if (doubled.length === 0) return [];
  const placeAt = lineIndex(text);
  return doubled.slice(0, MAX_TOLD).map(({ offset, name }) =>
    faultOfFile(
      file,
      {
        rule: 'json-duplicate',
        found: `the member ${shown(name)} a second time`,
        expected: 'each member of an object once',
        mend: 'Keep one of the two and delete the other: of two only the last would be read.',
      },
      placeAt(offset),
    ),
  );
}

function hiddenCharacterFaults(source: JsonSource): readonly Fault[] {
  const faults: Fault[] = [];
  const waiting: [unknown, FieldPath][] = [[source.value, []]];
  for (let next = waiting.pop(); next !== undefined && faults.length < MAX_TOLD; next = waiting.pop()) {
    const [value, path] = next;
    if (typeof value === 'string') {
      const code = hiddenCharacterIn(value);
      if (code !== null) faults.push(faultAt(source, path, hiddenCharacterRule(code)));
    } else if (Array.isArray(value)) {
      // Lists of numbers are most of a map and hold no text.
      value.forEach((item, index) => {
        if (typeof item !== 'number') waiting.push([item, [...path, index]]);
      });
    } else if (typeof value === 'object' && value !== null) {
      for (const [key, item] of Object.entries(value)) waiting.push([item, [...path, key]]);
    }
  }
  return faults;
}

function tooDeepFault(file: string, text: string, offset: number): Fault {
  return faultOfFile(
    file,
    {
      rule: 'json-depth',
      found: `more than ${MAX_LEVELS} brackets in one another`,
      expected: 'GeoJSON, which needs nine',
      mend: 'Look for a bracket that is repeated by mistake, or export the map again.',
    },
    lineIndex(text)(offset),
  );
}

function syntaxFault(file: string, text: string, offset: number): Fault {
  const isEmpty = text.trim() === '';
  const place = isEmpty ? FILE_START : lineIndex(text)(offset);
  const lineStart = offset - place.column + 1;
  const from = Math.max(lineStart, offset - CHARACTERS_BEFORE + 1);
  return faultOfFile(
    file,
    {
      rule: 'json-syntax',
      found: isEmpty
        ? 'an empty file'
        : offset >= text.trimEnd().length
          ? 'the end of the file'
          : shown(text.slice(from, from + CHARACTERS_SHOWN).split('\n')[0] ?? ''),
      expected: 'GeoJSON, whole and well-formed',
      mend: 'Look for a comma, bracket or quotation mark that is missing or too many just there, or export the map again.',
    },
    place,
  );
}

/** A map is often one long line: a fault shows what stands just before the place. */
const CHARACTERS_BEFORE = 20;
const CHARACTERS_SHOWN = 200;
