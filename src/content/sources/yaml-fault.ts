import type { Fault } from '../fault.ts';
import type { TextPlace } from './text-place.ts';

interface YamlRule {
  readonly rule: string;
  readonly expected: string;
  readonly mend: string;
}

/** What the commoner slips mean to a person; the parser's codes are those of the package `yaml`. */
const RULES: Readonly<Record<string, YamlRule>> = {
  DUPLICATE_KEY: {
    rule: 'field-duplicate',
    expected: 'each field once',
    mend: 'Keep one of the two lines and delete the other.',
  },
  SHARED: {
    rule: 'yaml-shared',
    expected: 'every value written out where it stands',
    mend: 'Write the value itself instead of a & anchor or a * alias; put text that begins with & or * in quotes.',
  },
  TOO_DEEP: {
    rule: 'yaml-depth',
    expected: 'a few levels of fields',
    mend: 'Look for a bracket that is repeated by mistake.',
  },
  TAB_AS_INDENT: {
    rule: 'yaml-tab',
    expected: 'spaces at the start of the line',
    mend: 'Replace the tab by spaces.',
  },
  BAD_INDENT: {
    rule: 'yaml-indent',
    expected: 'the same number of spaces as the lines it belongs to',
    mend: 'Line it up with the fields around it.',
  },
  BLOCK_AS_IMPLICIT_KEY: {
    rule: 'yaml-colon',
    expected: 'one colon a line',
    mend: 'Put a value that holds a colon in quotes.',
  },
  MISSING_CHAR: {
    rule: 'yaml-unclosed',
    expected: 'every bracket, brace and quote closed, and a space after every colon',
    mend: 'Close it, or put text that holds brackets or quotes in quotes as a whole.',
  },
  BAD_ALIAS: {
    rule: 'yaml-shared',
    expected: 'every value written out where it stands',
    mend: 'Put text that begins with & or * in quotes.',
  },
  MULTIPLE_DOCS: {
    rule: 'yaml-second',
    expected: 'the rest of the fields, with no line of ... between them',
    mend: 'Delete the line of three points: what follows it would not be read.',
  },
  TAG_RESOLVE_FAILED: {
    rule: 'yaml-tag',
    expected: 'a plain value',
    mend: 'Put text that begins with an exclamation mark in quotes.',
  },
};

/** The fault for what the YAML parser found, in the words of a person who keeps records. */
export function yamlFault(file: string, code: string, place: TextPlace, found: string, message = ''): Fault {
  const rule = RULES[code] ?? {
    rule: 'yaml-syntax',
    expected: 'fields as name: value',
    mend: `Put text that holds colons, quotes or brackets in quotes. The reader says: ${message.split('\n')[0]}.`,
  };
  return { file, ...place, field: '', found, severity: 'error', ...rule };
}
