import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

interface Schema {
  readonly $ref?: string;
  readonly type?: string | readonly string[];
  readonly pattern?: string;
  readonly enum?: unknown;
  readonly const?: unknown;
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly items?: Schema;
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
  readonly $defs?: Readonly<Record<string, Schema>>;
}

/** The names of all fields that take any text, from the JSON Schemas of the folder. */
export function textFields(folder: string): readonly string[] {
  const names = new Set<string>();
  for (const file of readdirSync(folder)) {
    const whole = JSON.parse(readFileSync(join(folder, file), 'utf8')) as Schema;
    gather(whole, '', whole.$defs ?? {}, names);
  }
  return [...names].sort();
}

function gather(schema: Schema, name: string, defs: Readonly<Record<string, Schema>>, into: Set<string>): void {
  const { $ref, type, pattern, properties = {}, items, anyOf = [], oneOf = [] } = schema;
  if ($ref !== undefined) gather(defs[$ref.slice($ref.lastIndexOf('/') + 1)] ?? {}, name, defs, into);
  if (type === 'string' && pattern === undefined && schema.enum === undefined && schema.const === undefined)
    into.add(name);
  for (const [field, each] of Object.entries(properties)) gather(each, field, defs, into);
  if (items !== undefined) gather(items, name, defs, into);
  for (const each of [...anyOf, ...oneOf]) gather(each, name, defs, into);
}
