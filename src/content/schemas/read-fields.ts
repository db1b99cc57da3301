import * as z from 'zod';
import { didYouMean, listed } from '../did-you-mean.ts';
import type { Fault } from '../fault.ts';
import { type FieldPath, faultAt, fieldName, type Source } from '../sources/source.ts';
import { shown } from '../sources/text-place.ts';

/** A record read by its schema. `value` is null where an error leaves nothing to go on. */
export interface FieldsRead<T> {
  readonly value: T | null;
  readonly faults: readonly Fault[];
}

type Issue = z.core.$ZodIssue;

/** Reads a record's values by its schema; every issue becomes a fault with the place of its field. */
export function readFields<T>(schema: z.ZodType<T>, values: unknown, source: Source): FieldsRead<T> {
  const result = schema.safeParse(values);
  if (result.success) return { value: result.data, faults: [] };
  return { value: null, faults: faultsOfIssues(result.error.issues, schema, source) };
}

/** The faults of a record that its schema has refused. */
export function faultsOfIssues(issues: readonly Issue[], schema: z.ZodType, source: Source): readonly Fault[] {
  return issues.flatMap((issue) => faultsOfIssue(issue, schema, source));
}

/**
 * As `readFields`, but where only optional fields are wrong it still gives the record without them, so that the checks
 * between records can tell the rest of what is wrong in the same run. Faults remain faults.
 */
export function readFieldsLeniently<T>(schema: z.ZodType<T>, values: unknown, source: Source): FieldsRead<T> {
  const whole = schema.safeParse(values);
  if (whole.success) return { value: whole.data, faults: [] };
  const { issues } = whole.error;
  const faults = issues.flatMap((issue) => faultsOfIssue(issue, schema, source));
  const wrong = new Set(
    issues.flatMap((issue) =>
      issue.code === 'unrecognized_keys' && issue.path.length === 0 ? issue.keys : [issue.path[0]],
    ),
  );
  if (wrong.has(undefined) || typeof values !== 'object' || values === null) return { value: null, faults };
  const rest = Object.fromEntries(Object.entries(values).filter(([key]) => !wrong.has(key)));
  const partial = schema.safeParse(rest);
  return { value: partial.success ? partial.data : null, faults };
}

function faultsOfIssue(issue: Issue, schema: z.ZodType, source: Source): readonly Fault[] {
  if (issue.code === 'unrecognized_keys') return issue.keys.map((key) => unknownField(issue.path, key, schema, source));
  if (issue.code === 'invalid_union') {
    return faultsOfIssues(issuesOfNearest(issue), schema, source);
  }
  const written = source.writtenAt(issue.path);
  const isMissing = written === undefined || written.trim() === '';
  const found = isMissing ? 'nothing' : shown(written);
  const at = (rule: string, expected: string, mend: string) => [
    faultAt(source, issue.path, { rule, found, expected, mend }),
  ];
  if (isMissing && issue.path.length > 0) return at('field-missing', issue.message, 'Add it.');
  switch (issue.code) {
    case 'custom': {
      const { rule, mend } = issue.params as { rule: string; mend: string };
      return at(rule, issue.message, mend);
    }
    case 'invalid_value':
      return at(
        'field-word',
        issue.message,
        didYouMean(written ?? '', issue.values.map(String), 'Choose one of them.'),
      );
    case 'invalid_type':
      return at('field-shape', shapeWanted(issue), 'Write it in that shape.');
    default:
      return at('field-value', issue.message, 'Correct it.');
  }
}

/** A field of several shapes: what is wrong with the shape that was meant, which is the first that is not another altogether. */
function issuesOfNearest({ errors, path }: z.core.$ZodIssueInvalidUnion): readonly Issue[] {
  const isOtherShape = (issues: readonly Issue[]) =>
    issues.some((issue) => issue.code === 'invalid_type' && issue.path.length === 0);
  const nearest = errors.find((issues) => !isOtherShape(issues)) ?? errors.at(-1) ?? [];
  return nearest.map((issue) => ({ ...issue, path: [...path, ...issue.path] }) as Issue);
}

/** The message of a field says what it expects; for a bare object or list the schema names no more than its shape. */
function shapeWanted(issue: z.core.$ZodIssueInvalidType): string {
  if (!issue.message.startsWith('Invalid input')) return issue.message;
  return issue.expected === 'array' ? 'a list' : 'fields as { name: value }';
}

function unknownField(path: FieldPath, key: string, schema: z.ZodType, source: Source): Fault {
  const known = fieldsAt(schema, path);
  const field = [...path, key];
  const { line, column } = source.nameplaceOf(field);
  return {
    file: source.file,
    line,
    column,
    field: fieldName(field),
    rule: 'field-unknown',
    found: `the field ${shown(key)}`,
    expected: `one of ${listed(known, 24)}`,
    mend: didYouMean(key, known, 'Delete it, or move what it says to a field this guide reads.'),
    severity: 'error',
  };
}

interface JsonSchema {
  readonly properties?: Readonly<Record<string, JsonSchema>>;
  readonly items?: JsonSchema;
  /** A field of several shapes. */
  readonly anyOf?: readonly JsonSchema[];
}

/** A folder may hold the same slip a thousand times, and a schema takes long to describe. */
const KNOWN_FIELDS = new WeakMap<z.ZodType, JsonSchema>();

/** The fields a schema knows at a path. */
function fieldsAt(schema: z.ZodType, path: FieldPath): readonly string[] {
  let root = KNOWN_FIELDS.get(schema);
  if (root === undefined) {
    root = z.toJSONSchema(schema, { io: 'input' }) as JsonSchema;
    KNOWN_FIELDS.set(schema, root);
  }
  const at = path.reduce<readonly JsonSchema[]>(
    (inner, step) =>
      inner
        .flatMap((shape) => (typeof step === 'number' ? shape.items : shape.properties?.[String(step)]) ?? [])
        .flatMap((shape) => [shape, ...(shape.anyOf ?? [])]),
    [root],
  );
  return at.flatMap(({ properties = {} }) => Object.keys(properties));
}
