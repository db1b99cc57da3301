import { isMap, isScalar, isSeq, type Range } from 'yaml';
import { type FieldFault, type FieldPath, fieldName } from './source.ts';
import { keyText } from './yaml-key.ts';

/** A comma between braces or brackets that cuts a value in two, and where the stray part begins. */
export interface StrayPart {
  readonly offset: number;
  readonly field: string;
  readonly fault: FieldFault;
}

/**
 * Parts of a value that a comma has cut off. Between braces a comma ends a value, so `{ width: 1,5 m }` says a width of 1
 * and a field `5 m` without a value, which the reader would drop; between brackets `[shelf, distance: 2,5 m]` says 2 and
 * an entry more. Neither is read as a part of what was written: it is a fault that tells both readings.
 */
export function strayParts(text: string, contents: unknown): readonly StrayPart[] {
  const found: StrayPart[] = [];
  const look = (node: unknown, path: FieldPath): void => {
    if (isMap(node)) {
      node.items.forEach((pair, index) => {
        const key = keyText(pair);
        if (node.flow === true && pair.value === null) {
          const before = node.items[index - 1];
          const owner = before === undefined ? path : [...path, keyText(before)];
          const offset = startOf(pair.key);
          found.push({ offset, field: fieldName(owner), fault: strayField(text, node.range, offset, key) });
        }
        look(pair.value, [...path, key]);
      });
    } else if (isSeq(node)) {
      node.items.forEach((item, index) => {
        const offset = startOf(item);
        const isUnit = isScalar(item) && /^\d+\s*[a-z°%]/i.test(String(item.value));
        if (node.flow === true && index > 0 && isUnit && cutsNumber(text, offset)) {
          found.push({
            offset,
            field: fieldName([...path, index - 1]),
            fault: cutNumber(text, node.range, offset, 'an entry'),
          });
        }
        look(item, [...path, index]);
      });
    }
  };
  look(contents, []);
  return found;
}

function startOf(node: unknown): number {
  return (node as { range?: Range | null } | null)?.range?.[0] ?? 0;
}

function cutsNumber(text: string, offset: number): boolean {
  return /\d,$/.test(text.slice(Math.max(0, offset - 2), offset)) && /\d/.test(text.charAt(offset));
}

function strayField(text: string, around: Range | null | undefined, offset: number, key: string): FieldFault {
  if (cutsNumber(text, offset)) return cutNumber(text, around, offset, 'a field');
  return {
    rule: 'field-without-value',
    found: `"${key}" after a comma, without a value`,
    expected: 'name: value between the commas',
    mend: 'Put a value that holds a comma in quotes, or write a colon and a value behind the name.',
  };
}

function cutNumber(
  text: string,
  around: Range | null | undefined,
  offset: number,
  stray: 'a field' | 'an entry',
): FieldFault {
  const head = /[^\s,:{[]*$/.exec(text.slice(0, offset - 1))?.[0] ?? '';
  const tail = (/^[^,}\]\n]*/.exec(text.slice(offset, around?.[1]))?.[0] ?? '').trim();
  return {
    rule: 'decimal-comma',
    found: `${head},${tail}, which reads as ${head} and then ${stray} "${tail}"`,
    expected: `${head}.${tail} with a point, or two values apart`,
    mend: `Write ${head}.${tail} if that was meant; a comma between braces or brackets ends the value.`,
  };
}
