import {
  type Document,
  isAlias,
  isCollection,
  isMap,
  isScalar,
  isSeq,
  type Pair,
  parseDocument,
  type YAMLMap,
} from 'yaml';
import { type FrontMatterPlace, frontMatterPlace } from '../sources/front-matter-place.ts';
import { keyText } from '../sources/yaml-key.ts';

/** One change of a text: what stands from `start` up to `end` is replaced. */
export interface Splice {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** Where a field is: keys of maps and numbers of list items, from the top. */
export type FieldPath = readonly (string | number)[];

/** A record written in a way that cannot be changed by machine; the message says what to do by hand. */
export class CannotEdit extends Error {}

/**
 * The place of a record's front matter, to be changed where it stands.
 * @throws CannotEdit where it has none, or lines that the YAML reader would take for one
 */
export function editablePlace(text: string): FrontMatterPlace {
  const place = frontMatterPlace(text);
  if (place === 'missing') throw new CannotEdit('it does not begin with a line of ---');
  if (place === 'unclosed') throw new CannotEdit('no line of --- ends its front matter');
  if (/\r(?!\n)/.test(text.slice(place.start, place.end))) {
    throw new CannotEdit('its lines end in a carriage return alone: save it with the line ends of another editor');
  }
  return place;
}

/**
 * Reads YAML as every record is read (sources/yaml-source.ts), by the failsafe schema, with the tokens it was made from.
 * @throws CannotEdit where the text is not YAML
 */
export function readYaml(text: string): Document.Parsed {
  const document = parseDocument(text, { schema: 'failsafe', keepSourceTokens: true, logLevel: 'error' });
  const error = document.errors[0];
  if (error !== undefined) throw new CannotEdit(`its front matter is not valid YAML: ${error.message.split('\n')[0]}`);
  return document;
}

/** Puts all changes into the text. They must not overlap; at one place the earlier in the list comes first. */
export function applySplices(text: string, splices: readonly Splice[]): string {
  const ordered = splices.map((splice, index) => ({ ...splice, index }));
  ordered.sort((a, b) => a.start - b.start || a.index - b.index);
  let result = '';
  let done = 0;
  for (const { start, end, text: replacement } of ordered) {
    result += text.slice(done, start) + replacement;
    done = end;
  }
  return result + text.slice(done);
}

/** The pair of a key, if the map has it. */
export function findPair(map: YAMLMap, key: string): Pair | undefined {
  return map.items.find((pair) => keyText(pair) === key);
}

/** Offset of a pair's key. */
export function keyStart(pair: Pair): number {
  return rangeOf(pair.key)[0];
}

/** Offset behind the colon of a pair, or null where it has none (`{ key }`). */
export function colonEnd(pair: Pair): number | null {
  const token = (pair as { srcToken?: { sep?: readonly { type: string; offset: number }[] } }).srcToken;
  const colon = token?.sep?.find(({ type }) => type === 'map-value-ind');
  return colon === undefined ? null : colon.offset + 1;
}

/** Whether the node holds nothing at all: `key:` with no value. */
export function isNothing(node: unknown): boolean {
  if (node === null || node === undefined) return true;
  const [start, end] = rangeOf(node);
  return isScalar(node) && start === end;
}

/** Offset behind the last character of a pair's content, comments not counted. */
export function pairEnd(pair: Pair): number {
  return isNothing(pair.value) ? (colonEnd(pair) ?? rangeOf(pair.key)[1]) : contentEnd(pair.value);
}

/** Offset behind the last character of a node's content, comments not counted. */
export function contentEnd(node: unknown): number {
  if (isMap(node) && node.flow !== true) {
    const last = node.items.at(-1);
    if (last !== undefined) return pairEnd(last);
  }
  if (isSeq(node) && node.flow !== true && node.items.length > 0) return contentEnd(node.items.at(-1));
  return rangeOf(node)[1];
}

/** Offset of the line break that ends the line with the last content before `offset`, trailing comment included. */
export function lineEnd(text: string, offset: number): number {
  const endsOnBreak = offset > 0 && text[offset - 1] === '\n';
  const found = endsOnBreak ? offset - 1 : text.indexOf('\n', offset);
  const end = found === -1 ? text.length : found;
  return end > 0 && text[end - 1] === '\r' && text[end] === '\n' ? end - 1 : end;
}

/** Offset of the first character of the line. */
export function lineStart(text: string, offset: number): number {
  return text.lastIndexOf('\n', offset - 1) + 1;
}

/** The line break this text uses. */
export function lineBreak(text: string): '\n' | '\r\n' {
  return /\r\n/.test(text) ? '\r\n' : '\n';
}

/**
 * First and last offset of a node.
 * @throws CannotEdit for a node that stands nowhere in the text
 */
export function rangeOf(node: unknown): readonly [number, number] {
  const range = isCollection(node) || isScalar(node) || isAlias(node) ? node.range : null;
  if (range === null || range === undefined)
    throw new CannotEdit('a part of its front matter has no place in the text');
  return [range[0], range[1]];
}
