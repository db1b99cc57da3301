import { fieldList, type SchemaPart } from './schemas/field-list.ts';
import { recordJsonSchema } from './schemas/json-schemas.ts';
import type { KeyOrder } from './yaml-edit/edit-yaml.ts';

let orders: ReadonlyMap<string, readonly string[]> | undefined;

/**
 * The usual order of the keys of one map of a record, from the schema that reads it, so that a field added by a command stands
 * where a writer looks for it; empty where it has none. A water's hazards are written as a peg's are.
 */
export const PEG_FIELD_ORDER: KeyOrder = (path) => {
  orders ??= keysByMap(recordJsonSchema('water'), recordJsonSchema('peg'));
  return orders.get(path.join('.')) ?? [];
};

/** The keys of every map of some records; where two have a map of one name, that of the first counts but for the outermost. */
function keysByMap(...records: readonly SchemaPart[]): ReadonlyMap<string, readonly string[]> {
  const keys = new Map<string, string[]>();
  for (const [index, record] of records.entries()) {
    const own = new Map<string, string[]>();
    for (const { field } of fieldList(record)) {
      const [, map = '', key] = /^(?:(.*?)(?:\[\])?\.)?([^.]+?)$/.exec(field) ?? [];
      own.set(map, [...new Set([...(own.get(map) ?? []), key!])]);
    }
    if (index < records.length - 1) own.delete('');
    for (const [map, list] of own) if (!keys.has(map)) keys.set(map, list);
  }
  return keys;
}
