import { isMap, isScalar, isSeq, type Pair, Scalar, type YAMLMap, type YAMLSeq } from 'yaml';
import {
  blockItem,
  commaBetween,
  dashOffset,
  flowMap,
  insertIntoFlow,
  insertItem,
  insertPair,
} from './insert-entry.ts';
import { type ScalarValue, scalarText } from './scalar-text.ts';
import {
  applySplices,
  CannotEdit,
  colonEnd,
  type FieldPath,
  findPair,
  isNothing,
  keyStart,
  lineBreak,
  lineEnd,
  lineStart,
  pairEnd,
  rangeOf,
  readYaml,
  type Splice,
} from './yaml-place.ts';

/** One change of one field. Fields of a missing map are set one after the other; the first makes the map. */
export type FieldEdit =
  | { readonly kind: 'set'; readonly path: FieldPath; readonly value: ScalarValue }
  /** Adds an item to a list of maps, which is made where it is missing. */
  | { readonly kind: 'append'; readonly path: FieldPath; readonly item: Readonly<Record<string, ScalarValue>> }
  | { readonly kind: 'remove'; readonly path: FieldPath };

/** The usual order of keys in the map at a path; numbers of list items are left out of the path. */
export type KeyOrder = (path: readonly string[]) => readonly string[];

/**
 * Changes one field of a YAML text and leaves every other byte as it is.
 * @throws CannotEdit where the text is not YAML or the field is written in a way this does not change
 */
export function editYaml(text: string, edit: FieldEdit, order: KeyOrder): string {
  const root = readYaml(text).contents;
  if (root !== null && !isMap(root)) throw new CannotEdit('its front matter is no list of fields');
  if (root === null) return edit.kind === 'remove' ? text : `${newField(edit)}${lineBreak(text)}${text}`;
  return applySplices(text, splicesFor(text, root, edit, order));
}

function newField(edit: FieldEdit & { kind: 'set' | 'append' }): string {
  const [key, ...rest] = edit.path;
  const value = edit.kind === 'set' ? scalarText(edit.value) : `[${flowMap(fieldsOf(edit.item))}]`;
  return `${key}: ${nested(rest, value)}`;
}

function splicesFor(text: string, root: YAMLMap, edit: FieldEdit, order: KeyOrder): Splice[] {
  const last = edit.path.at(-1);
  if (typeof last !== 'string') throw new CannotEdit('a list item cannot be changed as a whole');
  let node: YAMLMap | YAMLSeq = root;
  for (const [depth, step] of edit.path.slice(0, -1).entries()) {
    const next = childOf(node, step);
    if (!isMap(next) && !isSeq(next)) return makePath(text, node, edit, depth, order);
    node = next;
  }
  if (!isMap(node)) throw new CannotEdit(`${edit.path.slice(0, -1).join('.')} is a list`);
  const pair = findPair(node, last);
  const keys = order(namesOf(edit.path.slice(0, -1)));
  if (edit.kind === 'remove') return pair === undefined ? [] : removePair(text, node, pair);
  if (edit.kind === 'append') return appendTo(text, root, node, pair, edit, keys);
  if (pair === undefined) return insertPair(text, node, last, scalarText(edit.value), keys);
  return replaceValue(text, pair, edit.value);
}

function childOf(node: YAMLMap | YAMLSeq, step: string | number): unknown {
  if (isMap(node)) return findPair(node, String(step))?.value;
  return typeof step === 'number' ? node.items[step] : undefined;
}

/** Makes the maps that are missing on the way to a field. */
function makePath(text: string, node: YAMLMap | YAMLSeq, edit: FieldEdit, depth: number, order: KeyOrder): Splice[] {
  const step = edit.path[depth];
  if (edit.kind === 'remove') return [];
  if (edit.kind === 'append' || typeof step !== 'string' || !isMap(node)) {
    throw new CannotEdit(`${edit.path.slice(0, depth + 1).join('.')} is not there to be changed`);
  }
  const value = nested(edit.path.slice(depth + 1), scalarText(edit.value));
  const pair = findPair(node, step);
  if (pair === undefined) return insertPair(text, node, step, value, order(namesOf(edit.path.slice(0, depth))));
  if (isNothing(pair.value)) return [fillNothing(pair, value)];
  throw new CannotEdit(`${edit.path.slice(0, depth + 1).join('.')} is no map of fields`);
}

function nested(path: FieldPath, value: string): string {
  return path.reduceRight<string>((inner, key) => `{ ${key}: ${inner} }`, value);
}

function namesOf(path: FieldPath): string[] {
  return path.filter((step): step is string => typeof step === 'string');
}

function fieldsOf(item: Readonly<Record<string, ScalarValue>>): (readonly [string, string])[] {
  return Object.entries(item).map(([key, value]) => [key, scalarText(value)] as const);
}

function replaceValue(text: string, pair: Pair, value: ScalarValue): Splice[] {
  const node = pair.value;
  if (isNothing(node)) return [fillNothing(pair, scalarText(value))];
  if (isMap(node) || isSeq(node)) throw new CannotEdit(`${String(pair.key)} holds more than one value`);
  if (isScalar(node) && node.value === String(value)) return [];
  const [start, end] = rangeOf(node);
  const style = isScalar(node) ? (node.type ?? Scalar.PLAIN) : Scalar.PLAIN;
  // A text in block form ends with its line break, which is to stay.
  const ending = text[end - 1] === '\n' ? lineBreak(text) : '';
  return [{ start, end, text: scalarText(value, style) + ending }];
}

function fillNothing(pair: Pair, value: string): Splice {
  const colon = colonEnd(pair);
  const start = colon ?? rangeOf(pair.key)[1];
  return { start, end: start, text: colon === null ? `: ${value}` : ` ${value}` };
}

function appendTo(
  text: string,
  root: YAMLMap,
  map: YAMLMap,
  pair: Pair | undefined,
  edit: FieldEdit & { kind: 'append' },
  order: readonly string[],
): Splice[] {
  const fields = fieldsOf(edit.item);
  const list = pair?.value;
  if (isSeq(list) && list.items.length > 0) return insertItem(text, list, fields);
  const dashColumn = keyStart(map.items[0]!) - lineStart(text, keyStart(map.items[0]!)) + dashStep(text, root);
  const block = blockItem(text, fields, dashColumn, 2, false);
  if (pair === undefined) {
    const value = map.flow === true ? `[${flowMap(fields)}]` : block;
    return insertPair(text, map, String(edit.path.at(-1)), value, order);
  }
  if (isNothing(list)) {
    if (map.flow === true) return [fillNothing(pair, `[${flowMap(fields)}]`)];
    const start = lineEnd(text, pairEnd(pair));
    return [{ start, end: start, text: block }];
  }
  if (!isSeq(list)) throw new CannotEdit(`${edit.path.join('.')} is no list`);
  const [open, close] = rangeOf(list);
  if (map.flow === true || text.slice(open, close).includes('\n')) return insertIntoFlow(text, list, flowMap(fields));
  // `hazards: []` becomes a list of lines, as the other lists of a record are.
  const start = lineEnd(text, close);
  return [
    { start: colonEnd(pair) ?? open, end: close, text: '' },
    { start, end: start, text: block },
  ];
}

/** How far this record sets the dashes of its lists in from their key. */
function dashStep(text: string, root: YAMLMap): number {
  for (const { key, value } of root.items) {
    if (!isSeq(value) || value.flow === true) continue;
    const dash = dashOffset(value);
    return dash - lineStart(text, dash) - (rangeOf(key)[0] - lineStart(text, rangeOf(key)[0]));
  }
  return 2;
}

function removePair(text: string, map: YAMLMap, pair: Pair): Splice[] {
  const index = map.items.indexOf(pair);
  const start = keyStart(pair);
  const next = map.items[index + 1];
  if (map.flow === true) {
    const previous = map.items[index - 1];
    if (next !== undefined) return [{ start, end: keyStart(next), text: '' }];
    if (previous !== undefined) return [{ start: pairEnd(previous), end: pairEnd(pair), text: '' }];
    const comma = commaBetween(text, pairEnd(pair), rangeOf(map)[1] - 1);
    return [{ start, end: comma === null ? pairEnd(pair) : comma + 1, text: '' }];
  }
  const line = lineStart(text, start);
  if (text.slice(line, start).trim() === '') {
    const end = lineEnd(text, pairEnd(pair));
    return [{ start: line, end: Math.min(text.length, end + (text[end] === '\r' ? 2 : 1)), text: '' }];
  }
  if (next === undefined) throw new CannotEdit(`${String(pair.key)} is the only field of its item`);
  return [{ start, end: keyStart(next), text: '' }];
}
