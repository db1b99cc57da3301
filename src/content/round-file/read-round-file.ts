import type { Fault } from '../fault.ts';
import { fieldName } from '../sources/source.ts';
import { ROUND_FORMAT, ROUND_VERSION, type RoundFile, RoundFileSchema } from './round-file.ts';

/** A round, or why there is none. */
export type ReadRound =
  | { readonly round: RoundFile; readonly faults: readonly [] }
  | { readonly round: null; readonly faults: readonly Fault[] };

/** At most this many faults of one file are told: the first few say what is wrong with it. */
const MAX_FAULTS = 12;

/**
 * Reads a bank round handed over by a phone. Never throws: a file that is cut short, made by something else or by a newer
 * version, or that holds an impossible value, comes back as faults.
 */
export function readRoundFile(text: string, file: string): ReadRound {
  const refuse = (rule: string, found: string, expected: string, mend: string, field = ''): ReadRound => ({
    round: null,
    faults: [{ file, line: 1, column: 1, field, rule, found, expected, mend, severity: 'error' }],
  });
  let data: unknown;
  try {
    data = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch {
    return text.trimStart().slice(0, 200).includes(ROUND_FORMAT)
      ? refuse(
          'round-cut-short',
          'a bank round without its end',
          'a whole file',
          'It was cut short on its way. Hand it over again from the phone, which still has it.',
        )
      : refuse(
          'round-format',
          'no bank round',
          'the file the bank round page hands over',
          'Choose the file whose name begins with bank-round.',
        );
  }
  const head = isRecord(data) ? data : {};
  if (head.format !== ROUND_FORMAT) {
    return refuse(
      'round-format',
      'no bank round',
      `a file whose format is "${ROUND_FORMAT}"`,
      'Choose the file whose name begins with bank-round.',
      'format',
    );
  }
  if (typeof head.version === 'number' && head.version > ROUND_VERSION) {
    return refuse(
      'round-version',
      `version ${head.version}`,
      `version ${ROUND_VERSION}`,
      'It was made by a newer guide than this one: bring this one up to date first.',
    );
  }
  const result = RoundFileSchema.safeParse(data);
  if (result.success) return { round: result.data, faults: [] };
  const faults = result.error.issues.slice(0, MAX_FAULTS).map((issue): Fault => {
    const field = fieldName(issue.path);
    const found = shown(valueAt(data, issue.path));
    const expected = expectation(issue);
    const mend = 'A phone does not write this. Hand the round over again, or mend the value by hand.';
    return { file, line: 1, column: 1, field, rule: 'round-value', found, expected, mend, severity: 'error' };
  });
  return { round: null, faults };
}

type Issue = NonNullable<ReturnType<typeof RoundFileSchema.safeParse>['error']>['issues'][number];

function expectation(issue: Issue): string {
  switch (issue.code) {
    case 'invalid_type':
      return `${/^[aeiou]/.test(issue.expected) ? 'an' : 'a'} ${issue.expected}`;
    case 'too_small':
      return `${issue.inclusive === true ? 'at least' : 'above'} ${issue.minimum}${measure(issue.origin)}`;
    case 'too_big':
      return `at most ${issue.maximum}${measure(issue.origin)}`;
    case 'invalid_value':
      return `one of ${issue.values.map(String).join(', ')}`;
    case 'unrecognized_keys':
      return `no field ${issue.keys.join(', ')}`;
    default:
      return issue.code === 'invalid_union' ? 'one of the values a phone writes' : issue.message;
  }
}

function measure(origin: string): string {
  return origin === 'string' ? ' characters' : origin === 'array' ? ' entries' : '';
}

function valueAt(data: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>((value, step) => (isRecord(value) ? value[step as string] : undefined), data);
}

function shown(value: unknown): string {
  if (value === undefined) return 'nothing';
  const text = JSON.stringify(value);
  return text.length > 60 ? `${text.slice(0, 60)}…` : text;
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null;
}
