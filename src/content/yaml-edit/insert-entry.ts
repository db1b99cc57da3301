import { isMap, isSeq, type Pair, type YAMLMap, type YAMLSeq } from 'yaml';
import {
  contentEnd,
  findPair,
  keyStart,
  lineBreak,
  lineEnd,
  lineStart,
  pairEnd,
  rangeOf,
  type Splice,
} from './yaml-place.ts';

/**
 * Adds `key: value` to a map, in the map's own style: on a line of its own, or between its braces.
 * @param order the usual order of this map's keys: the new one goes behind the nearest that comes before it
 * @param value text of the value; one that starts with a line break is a block of its own
 */
export function insertPair(text: string, map: YAMLMap, key: string, value: string, order: readonly string[]): Splice[] {
  const entry = /^\r?\n/.test(value) ? `${key}:${value}` : `${key}: ${value}`;
  if (map.flow === true) return insertIntoFlow(text, map, entry);
  const anchor = pairBefore(map, key, order);
  const first = map.items[0];
  if (first === undefined) return [{ start: 0, end: 0, text: `${entry}${lineBreak(text)}` }];
  const indent = ' '.repeat(keyStart(first) - lineStart(text, keyStart(first)));
  if (anchor === undefined) {
    const start = keyStart(first);
    return [{ start, end: start, text: `${entry}${lineBreak(text)}${indent}` }];
  }
  const start = lineEnd(text, pairEnd(anchor));
  return [{ start, end: start, text: `${lineBreak(text)}${indent}${entry}` }];
}

/** The pair a new key goes behind; the last one for a key without a usual place. */
function pairBefore(map: YAMLMap, key: string, order: readonly string[]): Pair | undefined {
  const place = order.indexOf(key);
  if (place === -1) return map.items.at(-1);
  for (let index = place - 1; index >= 0; index--) {
    const pair = findPair(map, order[index]!);
    if (pair !== undefined) return pair;
  }
  return undefined;
}

/** Adds an entry at the end of `{ … }` or `[ … ]`, on a line of its own where the bracket closes on one. */
export function insertIntoFlow(text: string, flow: YAMLMap | YAMLSeq, entry: string): Splice[] {
  const [open, end] = rangeOf(flow);
  const close = end - 1;
  const last = flow.items.at(-1);
  if (last === undefined) {
    const before = isMap(flow) ? ' ' : '';
    const after = isMap(flow) && close === open + 1 ? ' ' : '';
    return [{ start: open + 1, end: open + 1, text: `${before}${entry}${after}` }];
  }
  const lastEnd = isMap(flow) ? pairEnd(last as Pair) : contentEnd(last);
  const comma = commaBetween(text, lastEnd, close);
  const closingLine = lineStart(text, close);
  if (closingLine > lastEnd && text.slice(closingLine, close).trim() === '') {
    const lastStart = isMap(flow) ? keyStart(last as Pair) : rangeOf(last)[0];
    const indent = /^[ \t]*/.exec(text.slice(lineStart(text, lastStart)))![0];
    const start = lineEnd(text, closingLine);
    const added = { start, end: start, text: `${lineBreak(text)}${indent}${entry}${comma === null ? '' : ','}` };
    return comma === null ? [{ start: lastEnd, end: lastEnd, text: ',' }, added] : [added];
  }
  return comma === null
    ? [{ start: lastEnd, end: lastEnd, text: `, ${entry}` }]
    : [{ start: comma + 1, end: comma + 1, text: ` ${entry}` }];
}

/** Offset of the comma behind the last entry, if it has one. Only blanks and comments stand there beside it. */
export function commaBetween(text: string, from: number, to: number): number | null {
  for (let offset = from; offset < to; offset++) {
    if (text[offset] === ',') return offset;
    if (text[offset] === '#') offset = lineEnd(text, offset);
  }
  return null;
}

/** Adds an item of several fields at the end of a list, written as the list's last item is. */
export function insertItem(text: string, list: YAMLSeq, fields: readonly (readonly [string, string])[]): Splice[] {
  if (list.flow === true) return insertIntoFlow(text, list, flowMap(fields));
  const last: unknown = list.items.at(-1);
  const dash = dashOffset(list);
  const dashColumn = dash - lineStart(text, dash);
  const gap = isMap(last) && last.flow !== true && last.items[0] !== undefined ? keyColumn(text, last) - dashColumn : 2;
  const inFlow = (isMap(last) && last.flow === true) || isSeq(last);
  const start = lineEnd(text, contentEnd(last));
  return [{ start, end: start, text: blockItem(text, fields, dashColumn, gap, inFlow) }];
}

/** Lines of one list item, each with its line break in front. */
export function blockItem(
  text: string,
  fields: readonly (readonly [string, string])[],
  dashColumn: number,
  gap: number,
  inFlow: boolean,
): string {
  const indent = ' '.repeat(dashColumn);
  if (inFlow) return `${lineBreak(text)}${indent}- ${flowMap(fields)}`;
  const lines = fields.map(([key, value], index) => {
    const lead = index === 0 ? `-${' '.repeat(gap - 1)}` : ' '.repeat(gap);
    return `${lineBreak(text)}${indent}${lead}${key}: ${value}`;
  });
  return lines.join('');
}

/** `{ key: value, … }` */
export function flowMap(fields: readonly (readonly [string, string])[]): string {
  return `{ ${fields.map(([key, value]) => `${key}: ${value}`).join(', ')} }`;
}

/** Offset of a block list's first dash. */
export function dashOffset(list: YAMLSeq): number {
  const token = list.srcToken as
    | { items?: readonly { start: readonly { type: string; offset: number }[] }[] }
    | undefined;
  const dash = token?.items?.[0]?.start.find(({ type }) => type === 'seq-item-ind');
  return dash?.offset ?? rangeOf(list)[0];
}

function keyColumn(text: string, map: YAMLMap): number {
  const start = keyStart(map.items.at(-1)!);
  const column = start - lineStart(text, start);
  const first = keyStart(map.items[0]!);
  return map.items.length > 1 ? column : first - lineStart(text, first);
}
