import { isDeepStrictEqual } from 'node:util';
import { parseDocument } from 'yaml';
import { PEG_FIELD_ORDER } from './peg-field-order.ts';
import { editYaml, type FieldEdit, type KeyOrder } from './yaml-edit/edit-yaml.ts';
import { CannotEdit, type FieldPath, readYaml } from './yaml-edit/yaml-place.ts';

export type { FieldEdit } from './yaml-edit/edit-yaml.ts';
export { CannotEdit, type FieldPath } from './yaml-edit/yaml-place.ts';

/**
 * Changes chosen fields of a record's front matter and no other byte: comments, order of keys, quotes, line ends, byte
 * order mark and body stay as they are. What was written is read again and compared with what was meant.
 * @param text a whole record, `---` first
 * @param order the usual order of keys, for a field that is added; a peg record's where left out
 * @throws CannotEdit where there is no front matter, or where it is written in a way (anchors that are shared, doubled
 * keys) that this cannot change safely
 */
export function editFrontMatter(text: string, edits: readonly FieldEdit[], order: KeyOrder = PEG_FIELD_ORDER): string {
  const [start, end] = frontMatterRange(text);
  const before = text.slice(start, end);
  const after = edits.reduce((yaml, edit) => editYaml(yaml, edit, order), before);
  const meant = edits.reduce(withEdit, plainValue(before));
  if (!isDeepStrictEqual(plainValue(after), meant)) {
    throw new CannotEdit('its front matter shares values between fields or is written in an unusual way');
  }
  return text.slice(0, start) + after + text.slice(end);
}

/**
 * The front matter of a record as plain values, unchecked; empty where it has none that can be read.
 */
export function frontMatterValues(text: string): Readonly<Record<string, unknown>> {
  try {
    return plainValue(text.slice(...frontMatterRange(text))) as Readonly<Record<string, unknown>>;
  } catch (error) {
    if (error instanceof CannotEdit) return {};
    throw error;
  }
}

/** The same with every value as the text that is written: a place of `012` is `012`, and nothing is a number or a date. */
export function frontMatterTexts(text: string): Readonly<Record<string, unknown>> {
  try {
    const yaml = text.slice(...frontMatterRange(text));
    const document = parseDocument(yaml, { schema: 'failsafe', logLevel: 'error' });
    return document.errors.length > 0 ? {} : ((document.toJS() ?? {}) as Readonly<Record<string, unknown>>);
  } catch (error) {
    if (error instanceof CannotEdit) return {};
    throw error;
  }
}

/** Where the YAML between the two `---` lines starts and ends. */
function frontMatterRange(text: string): readonly [number, number] {
  const opening = /^\uFEFF?---[ \t]*\r?\n/.exec(text);
  if (opening === null) throw new CannotEdit('it does not begin with a line of ---');
  const start = opening[0].length;
  const closing = /^---[ \t]*$/m.exec(text.slice(start).replaceAll('\r', ' '));
  if (closing === null) throw new CannotEdit('no line of --- ends its front matter');
  return [start, start + closing.index];
}

function plainValue(yaml: string): unknown {
  const document = readYaml(yaml);
  try {
    return document.toJS() ?? {};
  } catch {
    throw new CannotEdit('its front matter names a value (`*name`) that is nowhere set');
  }
}

/** The same change made to plain values: what the text must say afterwards. */
function withEdit(value: unknown, edit: FieldEdit): unknown {
  const copy: unknown = structuredClone(value);
  changeIn(copy as Container, edit.path, edit);
  return copy;
}

type Container = Record<string | number, unknown>;

function changeIn(container: Container, path: FieldPath, edit: FieldEdit): void {
  const [step, ...rest] = path;
  if (step === undefined) return;
  if (rest.length > 0) {
    if (container[step] === null || container[step] === undefined) {
      if (edit.kind === 'remove') return;
      container[step] = {};
    }
    changeIn(container[step] as Container, rest, edit);
  } else if (edit.kind === 'set') container[step] = edit.value;
  else if (edit.kind === 'remove') delete container[step];
  else container[step] = [...((container[step] as unknown[] | null | undefined) ?? []), { ...edit.item }];
}
