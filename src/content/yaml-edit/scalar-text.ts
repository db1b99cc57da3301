import { isScalar, isSeq, parseDocument, Scalar } from 'yaml';

/** A value that fits on one line of front matter. */
export type ScalarValue = string | number | boolean;

/**
 * Writes a value so that YAML 1.2 reads exactly it back: bare where a person would write it bare, else in double quotes.
 * @param style the quotes the field had, kept where a text is put in their place
 */
export function scalarText(value: ScalarValue, style: string = Scalar.PLAIN): string {
  if (typeof value !== 'string') return String(value);
  if (style === Scalar.QUOTE_SINGLE && isPrintable(value)) return `'${value.replaceAll("'", "''")}'`;
  if (style === Scalar.QUOTE_DOUBLE || !canStandBare(value)) return doubleQuoted(value);
  return value;
}

/** Tried in a flow list, the strictest place: what stands bare there stands bare anywhere. */
function canStandBare(value: string): boolean {
  if (!isPrintable(value) || /^[?:-](\s|$)/.test(value)) return false;
  const document = parseDocument(`[${value}]`, { logLevel: 'silent' });
  if (document.errors.length > 0 || document.warnings.length > 0 || !isSeq(document.contents)) return false;
  const [item, ...more] = document.contents.items;
  return more.length === 0 && isScalar(item) && item.type === Scalar.PLAIN && item.value === value;
}

/** No line break, control character or other character that YAML asks to be escaped. */
function isPrintable(value: string): boolean {
  return /^[\x20-\x7e\u00a0-\u2027\u202a-\ud7ff\ue000-\ufefe\uff00-\ufffd]*$/.test(value);
}

/** JSON's strings are YAML's; what JSON leaves raw and YAML calls not printable is escaped as well. */
function doubleQuoted(value: string): string {
  return JSON.stringify(value).replace(
    /[\u007f-\u009f\u2028\u2029\ufeff\ufffe\uffff]/g,
    (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
}
