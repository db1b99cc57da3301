import * as z from 'zod';

/** A field that code calls otherwise than its file: `named('heightMetres', length(…))`. */
interface NamedField<Name extends string, Field extends z.ZodType> {
  readonly name: Name;
  readonly field: Field;
}

/** The fields of a thing by their keys in the file, each declared once: its reader, its words and what code calls it. */
export type FieldTable = Readonly<Record<string, z.ZodType | NamedField<string, z.ZodType>>>;

type FieldOf<Entry> = Entry extends NamedField<string, infer Field> ? Field : Entry extends z.ZodType ? Entry : never;
type NameOf<Key, Entry> = Entry extends NamedField<infer Name, z.ZodType> ? Name : Key;
type IsOptional<Entry> = FieldOf<Entry> extends z.ZodExactOptional<z.ZodType> ? true : false;

/** What zod reads the fields by: their keys in the file. */
export type ShapeOf<Table extends FieldTable> = { -readonly [Key in keyof Table]: FieldOf<Table[Key]> };

/** What code has of the fields, under its own names. */
export type RecordOf<Table extends FieldTable> = {
  [Key in keyof Table as IsOptional<Table[Key]> extends true ? never : NameOf<Key, Table[Key]>]: z.output<
    FieldOf<Table[Key]>
  >;
} & {
  [Key in keyof Table as IsOptional<Table[Key]> extends true ? NameOf<Key, Table[Key]> : never]?: z.output<
    FieldOf<Table[Key]>
  >;
};

/** Says what code calls a field of a table. */
export function named<const Name extends string, Field extends z.ZodType>(
  name: Name,
  field: Field,
): NamedField<Name, Field> {
  return { name, field };
}

/** Reads a map of a record by its table; a field that the table lacks is a fault. */
export function recordSchema<Table extends FieldTable>(table: Table) {
  return z.strictObject(shapeOf(table)).transform(recordOf(table));
}

/** The shape of a table, for `z.strictObject` or `z.object`. */
export function shapeOf<Table extends FieldTable>(table: Table): ShapeOf<Table> {
  return Object.fromEntries(
    Object.entries(table).map(([key, entry]) => [key, isNamed(entry) ? entry.field : entry]),
  ) as ShapeOf<Table>;
}

/** Gives what was read by a table the names of code; fields that were not written stay out. */
export function recordOf<Table extends FieldTable>(
  table: Table,
): (written: Readonly<Record<string, unknown>>) => RecordOf<Table> {
  const names = Object.entries(table).map(([key, entry]) => [key, isNamed(entry) ? entry.name : key] as const);
  return (written) => {
    const record: Record<string, unknown> = {};
    for (const [key, name] of names) if (written[key] !== undefined) record[name] = written[key];
    return record as RecordOf<Table>;
  };
}

function isNamed(entry: z.ZodType | NamedField<string, z.ZodType>): entry is NamedField<string, z.ZodType> {
  return 'field' in entry && 'name' in entry;
}
