/** Text that could not be read, with what a person needs to mend it. */
export interface Unreadable {
  readonly ok: false;
  /** Stable word for the rule broken: `weight-ounces`. */
  readonly rule: string;
  /** What was expected, to stand after "expected": "ounces from 0 to 15". */
  readonly expected: string;
  /** What the writer should do, a whole sentence. */
  readonly mend: string;
}

/** What a person wrote, as a value, or why it is none. */
export type Parsed<T> = { readonly ok: true; readonly value: T } | Unreadable;

/** A value that was read. */
export function parsed<T>(value: T): Parsed<T> {
  return { ok: true, value };
}

/** A text that was not. */
export function unreadable(rule: string, expected: string, mend: string): Unreadable {
  return { ok: false, rule, expected, mend };
}

/** A decimal number as people write it, without a sign or an exponent: `12`, `12.5`, `.5`. */
export const DECIMAL = String.raw`(?:\d{1,9}(?:\.\d{1,12})?|\.\d{1,12})`;

/** A number with a comma where its point should stand: `10,66`. */
export function hasDecimalComma(text: string): boolean {
  return /\d,\d/.test(text);
}

/**
 * What to do about a comma in a number. Three figures behind it may be decimals or thousands: obeyed blindly, "write a point"
 * would make a bag of 1,066 g one of a gram.
 */
export function commaAdvice(written: string): string {
  const [, thousands, rest] = /(?<![\d.,])([1-9]\d{0,2}),(\d{3})(?![\d.,])/.exec(written) ?? [];
  if (thousands === undefined) return 'Write the decimal point as a point, not a comma.';
  return `Ask what was meant: ${thousands}${rest}, where the comma groups the thousands (leave it out), or ${thousands}.${rest}, where it is a decimal comma (write a point).`;
}
