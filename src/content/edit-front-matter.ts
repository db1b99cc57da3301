import { isDeepStrictEqual } from 'node:util';
import { PEG_FIELD_ORDER } from './peg-field-order.ts';
import { frontMatterPlace } from './sources/front-matter-place.ts';
import { plainText } from './sources/plain-text.ts';
import { editYaml, type FieldEdit, type KeyOrder } from './yaml-edit/edit-yaml.ts';
import { CannotEdit, editablePlace, type FieldPath, readYaml } from './yaml-edit/yaml-place.ts';

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
  const { start, end } = editablePlace(text);
  const before = text.slice(start, end);
  const after = edits.reduce((yaml, edit) => editYaml(yaml, edit, order), before);
  const meant = edits.reduce(withEdit, plainValue(before));
  if (!isDeepStrictEqual(plainValue(after), meant)) {
    throw new CannotEdit('its front matter shares values between fields or is written in an unusual way');
  }
  return text.slice(0, start) + after + text.slice(end);
}

/**
 * The front matter of a record as it is written, unchecked: every value is text, so that a place of `012` stays `012`.
 * Empty where it has none that can be read.
 */
export function frontMatterTexts(fileText: string): Readonly<Record<string, unknown>> {
  const text = plainText(fileText);
  const place = frontMatterPlace(text);
  if (typeof place === 'string') return {};
  try {
    return plainValue(text.slice(place.start, place.end)) as Readonly<Record<string, unknown>>;
  } catch (error) {
    if (error instanceof CannotEdit) return {};
    throw error;
  }
}

function plainValue(yaml: string): unknown {
  const document = readYaml(yaml);
  try {
    return document.toJS() || {};
  } catch {
    throw new CannotEdit('its front matter names a value (`*name`) that is nowhere set');
  }
}

/** The same change made to values as they are written: what the text must say afterwards. */
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
    if (isEmpty(container[step])) {
      if (edit.kind === 'remove') return;
      container[step] = {};
    }
    changeIn(container[step] as Container, rest, edit);
  } else if (edit.kind === 'set') container[step] = String(edit.value);
  else if (edit.kind === 'remove') delete container[step];
  else {
    const item = Object.fromEntries(Object.entries(edit.item).map(([key, value]) => [key, String(value)]));
    container[step] = isEmpty(container[step]) ? [item] : [...(container[step] as unknown[]), item];
  }
}

function isEmpty(value: unknown): boolean {
  return value === null || value === undefined || value === '';
}
