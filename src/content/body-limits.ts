import type { Fault } from './fault.ts';
import type { MarkdownRecord } from './sources/front-matter.ts';
import { faultOfFile } from './sources/source.ts';

/** How much a record's text may hold. Reading Markdown takes time that grows with the square of its marks, and calls itself for each level. */
const BODY_LIMITS = {
  characters: 50_000,
  /** Characters that open or close something: `* _ ~ ` [ ] < ! |`. */
  marks: 5000,
  /** Quotations and lists in one another on one line. */
  levels: 12,
  /** Blanks a line begins with, which is how lists stand in lists. */
  indent: 60,
} as const;

const LEVELS = /^[ \t]*(?:(?:>|[-+*]|\d{1,9}[.)])[ \t]*)+/;
const ONE_LEVEL = />|[-+*]|\d{1,9}[.)]/g;

/** What of a record's text is too long, too dense or too deep to be read; none for every text a person wrote. */
export function bodyLimitFaults({ source, body, bodyLine }: MarkdownRecord): readonly Fault[] {
  const fault = (line: number, found: string, expected: string, mend: string) => [
    faultOfFile(source.file, { rule: 'body-limits', found, expected, mend }, { line: bodyLine + line, column: 1 }),
  ];
  const { characters, marks, levels, indent } = BODY_LIMITS;
  if (body.length > characters) {
    const found = `a text of ${body.length} characters`;
    return fault(0, found, `at most ${characters}`, 'Shorten it, or put a part of it elsewhere and link to it.');
  }
  const marksFound = body.match(/[*_~`[\]<!|]/g)?.length ?? 0;
  if (marksFound > marks) {
    const found = `a text with ${marksFound} of the marks * _ ~ \` [ ] < ! |`;
    return fault(0, found, `at most ${marks}`, 'Write it with fewer of them.');
  }
  const lines = body.split('\n');
  const deep = lines.findIndex((line) => (LEVELS.exec(line)?.[0].match(ONE_LEVEL)?.length ?? 0) > levels);
  if (deep !== -1) {
    const found = 'quotations or lists in one another';
    return fault(deep, found, `at most ${levels} levels of them`, 'Take out the marks that are repeated.');
  }
  const far = lines.findIndex((line) => /^[ \t]*/.exec(line)![0].length > indent);
  if (far === -1) return [];
  return fault(far, `a line that begins with more than ${indent} blanks`, 'a line of text', 'Take the blanks out.');
}
