import { passString } from './json-scan.ts';
import { lineIndex } from './line-index.ts';
import type { FieldPath, Source } from './source.ts';
import type { TextPlace } from './text-place.ts';

/** Where a value stands, and the name in front of it where it is a member of an object. */
interface Child {
  readonly start: number;
  readonly nameStart: number;
}

type Children = ReadonlyMap<PropertyKey, Child>;

/** A found value shows no more of itself than this; a whole map would be none the clearer. */
const MAX_WRITTEN = 400;
const BLANKS = /[ \t\n\r]*/y;
const SCALAR = /[^\s,\]}]*/y;

/**
 * Places in a JSON text that is known to be sound. What a list or object holds is looked through the first time something
 * in it is asked for, so that a fault in a map of twenty megabytes costs one pass, and ten thousand faults hardly more.
 */
export function jsonPlaces(file: string, text: string): Source {
  const placeAt = lineIndex(text);
  const looked = new Map<number, Children>();
  const childrenAt = (start: number): Children => {
    let children = looked.get(start);
    if (children === undefined) {
      children = childrenOf(text, start);
      looked.set(start, children);
    }
    return children;
  };
  const find = (path: FieldPath): Child | undefined => {
    const top = skipBlanks(text, 0);
    let child: Child | undefined = { start: top, nameStart: top };
    for (const step of path) {
      if (child === undefined) return undefined;
      child = childrenAt(child.start).get(step);
    }
    return child;
  };
  /** The value, or the nearest thing around it. */
  const placeOf = (path: FieldPath): TextPlace => {
    for (let length = path.length; length >= 0; length--) {
      const child = find(path.slice(0, length));
      if (child !== undefined) return placeAt(length === path.length ? child.start : child.nameStart);
    }
    return { line: 1, column: 1 };
  };
  return {
    file,
    placeOf,
    nameplaceOf: (path) => {
      const child = find(path);
      return child === undefined ? placeOf(path.slice(0, -1)) : placeAt(child.nameStart);
    },
    writtenAt: (path) => {
      const child = find(path);
      return child === undefined ? undefined : written(text, child.start);
    },
  };
}

function written(text: string, start: number): string {
  if (text[start] === '{' || text[start] === '[') return text.slice(start, start + MAX_WRITTEN);
  return String(JSON.parse(text.slice(start, endOf(text, start))));
}

/** The members or items of the object or list that begins at an offset; none where a bare value stands there. */
function childrenOf(text: string, start: number): Children {
  const children = new Map<PropertyKey, Child>();
  const isObject = text[start] === '{';
  if (!isObject && text[start] !== '[') return children;
  let at = skipBlanks(text, start + 1);
  for (let index = 0; text[at] !== '}' && text[at] !== ']'; index++) {
    const nameStart = at;
    let key: PropertyKey = index;
    if (isObject) {
      const { end } = passString(text, at);
      key = JSON.parse(text.slice(at, end)) as string;
      at = skipBlanks(text, skipBlanks(text, end) + 1);
    }
    children.set(key, { start: at, nameStart });
    at = skipBlanks(text, endOf(text, at));
    if (text[at] === ',') at = skipBlanks(text, at + 1);
  }
  return children;
}

/** The offset behind the value that begins at an offset. */
function endOf(text: string, start: number): number {
  let depth = 0;
  for (let at = start; ; ) {
    const character = text[at];
    if (character === '"') {
      at = passString(text, at).end;
    } else if (character === '{' || character === '[') {
      depth++;
      at++;
    } else if (character === '}' || character === ']') {
      depth--;
      at++;
    } else if (depth === 0) {
      SCALAR.lastIndex = at;
      SCALAR.test(text);
      return SCALAR.lastIndex;
    } else at++;
    if (depth === 0) return at;
  }
}

function skipBlanks(text: string, at: number): number {
  BLANKS.lastIndex = at;
  BLANKS.test(text);
  return BLANKS.lastIndex;
}
