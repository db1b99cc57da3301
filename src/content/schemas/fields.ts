import * as z from 'zod';
import { type Day, isDay } from '../../domain/day.ts';
import { commaAdvice, hasDecimalComma, type Parsed, parsed, unreadable } from '../../domain/parsed.ts';

/** What an editor's JSON Schema says of a field. */
interface FieldHint {
  readonly description: string;
  readonly type?: string | readonly string[];
  readonly pattern?: string;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly maxLength?: number;
  readonly examples?: readonly (string | number | boolean)[];
}

/** Any text; what is written as a bare number is text too. */
const TEXT = ['string', 'number'] as const;
/** Where a bare number will do, and text too. */
export const NUMBER_OR_TEXT = ['number', 'string'] as const;
const MAX_CHARACTERS = 2000;

/**
 * A field whose text is read by `read`. Front matter and cells hand over what was written; the message of an issue is
 * what was expected, its parameters are the rule and how to mend it.
 */
export function fieldOf<T>(read: (text: string) => Parsed<T>, hint: FieldHint) {
  const { type = 'string', ...rest } = hint;
  return z
    .string({ error: hint.description })
    .transform((text, context): T => {
      const result = read(text.trim());
      if (result.ok) return result.value;
      const params = { rule: result.rule, mend: result.mend };
      context.addIssue({ code: 'custom', message: result.expected, params });
      return z.NEVER;
    })
    .meta({ type: type as string, ...rest });
}

/** Any text on one line or more. */
export function text(description: string) {
  return fieldOf(
    (written) =>
      written.length <= MAX_CHARACTERS
        ? parsed(written)
        : unreadable(
            'text-length',
            `at most ${MAX_CHARACTERS} characters`,
            'Shorten it, or move it to the text below.',
          ),
    { description, type: TEXT, maxLength: MAX_CHARACTERS },
  );
}

/** A lower-case word used as a name in files: `kiln-pool`. */
export function word(description: string) {
  return fieldOf(
    (written) =>
      /^[a-z][a-z0-9-]{0,39}$/.test(written)
        ? parsed(written)
        : unreadable(
            'word',
            `${description}: small letters, digits and hyphens`,
            'Write it as one word, such as kiln-pool.',
          ),
    { description, pattern: '^[a-z][a-z0-9-]{0,39}$' },
  );
}

/** A text that has to match a pattern. */
export function matching(pattern: RegExp, rule: string, expected: string, mend: string) {
  // A painted `23` is a number to an editor.
  const whole = ['23', '999'].some((number) => pattern.test(number));
  const number = pattern.test('2.5') ? 'number' : 'integer';
  return fieldOf((written) => (pattern.test(written) ? parsed(written) : unreadable(rule, expected, mend)), {
    description: expected,
    pattern: pattern.source,
    ...(whole ? { type: [number, 'string'], ...(pattern.test('-3') ? {} : { minimum: 0 }) } : {}),
  });
}

/** One of a few words. */
export function choice<const T extends readonly [string, ...string[]]>(words: T) {
  return z.enum(words, { error: `one of ${words.join(', ')}` });
}

/** As far as a pattern can tell: February has 29 days in every year. */
const DAY =
  '^\\d{4}-(?:(?:0[13578]|1[02])-(?:0[1-9]|[12]\\d|3[01])|(?:0[469]|11)-(?:0[1-9]|[12]\\d|30)|02-(?:0[1-9]|[12]\\d))$';

/** A day that exists. */
export function day(description = 'a day such as 2026-11-21') {
  return fieldOf<Day>(
    (written) => {
      if (isDay(written)) return parsed(written);
      if (/^\d{4}-\d{2}-\d{2}$/.test(written)) {
        return unreadable('day-exists', 'a day that exists', 'Look the day up: that month has no such day.');
      }
      return unreadable(
        'day',
        'a day as year-month-day, such as 2026-11-21',
        'Write four figures for the year, two each for month and day.',
      );
    },
    { description, pattern: DAY, examples: ['2026-11-21'] },
  );
}

/** `true` or `false`. */
export function yesNo(description: string) {
  return fieldOf<boolean>(
    (written) =>
      written === 'true' || written === 'false'
        ? parsed(written === 'true')
        : unreadable('true-false', 'true or false', 'Write true or false.'),
    { description, type: 'boolean' },
  );
}

/** A decimal number within limits, both included. */
export function number(description: string, least: number, most: number) {
  return fieldOf((written) => readNumber(written, least, most), {
    description,
    type: 'number',
    minimum: least,
    maximum: most,
  });
}

/** A whole number within limits, both included. */
export function wholeNumber(description: string, least: number, most: number) {
  return fieldOf(
    (written) => {
      const value = readNumber(written, least, most);
      if (!value.ok || Number.isInteger(value.value)) return value;
      return unreadable('whole-number', `a whole number from ${least} to ${most}`, 'Leave out the decimals.');
    },
    { description, type: 'integer', minimum: least, maximum: most },
  );
}

function readNumber(written: string, least: number, most: number): Parsed<number> {
  const range = `a number from ${least} to ${most}`;
  if (!/^[-−+]?(?:\d+(?:\.\d*)?|\.\d+)$/.test(written)) {
    return unreadable('number', range, hasDecimalComma(written) ? commaAdvice(written) : 'Write the bare number.');
  }
  const value = Number(written.replace('−', '-'));
  if (value >= least && value <= most) return parsed(value === 0 ? 0 : value);
  return unreadable('number-range', range, 'Correct the number.');
}
