/** A part of a JSON Schema, as far as the ones of this folder go. */
export interface SchemaPart {
  readonly type?: string | readonly string[];
  readonly description?: string;
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly properties?: Readonly<Record<string, SchemaPart>>;
  readonly required?: readonly string[];
  readonly items?: SchemaPart;
  readonly anyOf?: readonly SchemaPart[];
}

/** A field of a file, as its schema has it. */
export interface FieldOfFile {
  /** `hazards[].kind`. */
  readonly field: string;
  /** Whether the thing it is a field of must have it. */
  readonly isNeeded: boolean;
  /** Values or kind of value: "open, closed", "number or text". */
  readonly values: string;
  readonly about: string;
}

/**
 * Every field of a schema in its order, those of lists and of maps inside it below their own. Where something may be written in
 * several forms, the fields of all of them are listed, each once.
 */
export function fieldList(schema: SchemaPart): readonly FieldOfFile[] {
  const fields = new Map<string, FieldOfFile>();
  collect(schema, '', fields);
  return [...fields.values()];
}

function collect(part: SchemaPart, path: string, fields: Map<string, FieldOfFile>): void {
  for (const form of part.anyOf ?? []) collect(form, path, fields);
  if (part.items !== undefined) collect(part.items, `${path}[]`, fields);
  for (const [key, child] of Object.entries(part.properties ?? {})) {
    const field = path === '' ? key : `${path}.${key}`;
    const known = fields.get(field);
    fields.set(field, {
      field,
      isNeeded: (part.required ?? []).includes(key) && known?.isNeeded !== false,
      values: [...new Set([...(known?.values.split(', ') ?? []), ...valuesOf(child)])].join(', '),
      about: known?.about || aboutOf(child),
    });
    collect(child, field, fields);
  }
}

const KINDS: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'number',
  integer: 'whole number',
  boolean: 'true or false',
  array: 'list',
  object: 'fields',
};

function valuesOf({ type, enum: choices, const: only, anyOf = [] }: SchemaPart): readonly string[] {
  if (only !== undefined) return [`\`${String(only)}\``];
  if (choices !== undefined) return choices.map((choice) => `\`${String(choice)}\``);
  const all = typeof type === 'string' ? [type] : (type ?? []);
  // What is text first is text, though a bare number be let through.
  const types = all[0] === 'string' ? ['string'] : all;
  return [...new Set([...types.map((each) => KINDS[each] ?? each), ...anyOf.flatMap(valuesOf)])];
}

function aboutOf({ description, anyOf = [] }: SchemaPart): string {
  return description ?? anyOf.map(aboutOf).find((about) => about !== '') ?? '';
}

/** The names of a schema's fields, whatever they stand in. */
export function fieldNames(schema: SchemaPart): ReadonlySet<string> {
  return new Set(fieldList(schema).map(({ field }) => field.split('.').at(-1)!));
}
