import type { Fault } from '../fault.ts';
import { controlCharacterFaults, plainText } from './plain-text.ts';
import { faultOfFile, type Source } from './source.ts';
import { FILE_START, placeAtOffset, shown, type TextPlace } from './text-place.ts';
import { yamlPlaces } from './yaml-source.ts';

export interface JsonSource extends Source {
  readonly value: unknown;
}

interface JsonRead {
  readonly source: JsonSource | null;
  readonly faults: readonly Fault[];
}

/** Reads JSON. Places are looked up only when something asks for one: a map of 20,000 points seldom needs any. Never throws. */
export function readJson(file: string, fileText: string): JsonRead {
  const text = plainText(fileText);
  const characters = controlCharacterFaults(file, text);
  if (characters.length > 0) return { source: null, faults: characters };
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    return { source: null, faults: [syntaxFault(file, text, error)] };
  }
  let places: Source | undefined;
  const lazily = (): Source => {
    places ??= placesOf(file, text);
    return places;
  };
  return {
    source: {
      file,
      value,
      placeOf: (path) => lazily().placeOf(path),
      nameplaceOf: (path) => lazily().nameplaceOf(path),
      writtenAt: (path) => lazily().writtenAt(path),
    },
    faults: [],
  };
}

function placesOf(file: string, text: string): Source {
  try {
    return yamlPlaces(file, text);
  } catch {
    const start = () => FILE_START;
    return { file, placeOf: start, nameplaceOf: start, writtenAt: () => undefined };
  }
}

function syntaxFault(file: string, text: string, error: unknown): Fault {
  const message = error instanceof Error ? error.message : '';
  const offset = /at position (\d+)/.exec(message)?.[1];
  const isEmpty = text.trim() === '';
  const place: TextPlace = isEmpty
    ? FILE_START
    : placeAtOffset(text, offset === undefined ? text.length : Number(offset));
  const line = text.split('\n')[place.line - 1] ?? '';
  return faultOfFile(
    file,
    {
      rule: 'json-syntax',
      found: isEmpty ? 'an empty file' : offset === undefined ? 'the end of the file' : shown(line),
      expected: 'GeoJSON, whole and well-formed',
      mend: 'Look for a comma, bracket or quotation mark that is missing or too many at this place, or export the map again.',
    },
    place,
  );
}
