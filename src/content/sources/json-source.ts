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
  } catch {
    return { source: null, faults: [syntaxFault(file, text)] };
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

function syntaxFault(file: string, text: string): Fault {
  const isEmpty = text.trim() === '';
  const offset = brokenAt(text);
  const place: TextPlace = isEmpty ? FILE_START : placeAtOffset(text, offset);
  const line = text.split('\n')[place.line - 1] ?? '';
  const from = Math.max(0, place.column - CHARACTERS_BEFORE);
  return faultOfFile(
    file,
    {
      rule: 'json-syntax',
      found: isEmpty
        ? 'an empty file'
        : offset >= text.trimEnd().length
          ? 'the end of the file'
          : shown(line.slice(from)),
      expected: 'GeoJSON, whole and well-formed',
      mend: 'Look for a comma, bracket or quotation mark that is missing or too many just there, or export the map again.',
    },
    place,
  );
}

/** A map is often one long line: a fault shows what stands just before the place. */
const CHARACTERS_BEFORE = 20;

/**
 * Offset of the first character that cannot be JSON. The engine's own message seldom says, so the shortest broken start
 * of the text is looked for: twenty readings of a map of a million characters.
 */
function brokenAt(text: string): number {
  let sound = 0;
  let broken = text.length + 1;
  while (broken - sound > 1) {
    const middle = Math.floor((sound + broken) / 2);
    if (middle <= text.length && isSoundSoFar(text.slice(0, middle))) sound = middle;
    else broken = middle;
  }
  return Math.min(sound, text.length);
}

/** Whether the start of a text may still become JSON. */
function isSoundSoFar(start: string): boolean {
  try {
    JSON.parse(start);
    return true;
  } catch (error) {
    const message = error instanceof Error ? error.message : '';
    const position = /at position (\d+)/.exec(message)?.[1];
    return position === undefined
      ? /end of JSON/.test(message)
      : Number(position) >= start.length || /Unterminated/.test(message);
  }
}
