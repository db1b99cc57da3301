import type { Unread } from '../results/result-row.ts';
import { decodedText } from '../text-encoding.ts';
import type { RuleLine } from './rule-line.ts';
import { type OpenItems, ruleMark } from './rule-mark.ts';

/** A club's rules as they were typed. */
export interface RulesRead {
  readonly file: string;
  readonly lines: readonly RuleLine[];
  readonly unread: readonly Unread[];
}

/** As long as a record's text may be, and so as rules can be. */
const MAX_CHARACTERS = 50_000;
const MAX_HEADING = 70;

/**
 * Reads rules that are text: numbered, lettered or bulleted in any depth, headings, sentences, lines wrapped anywhere.
 * @throws RangeError with a sentence where the file is no text or too long
 */
export function readRules(file: string, bytes: Uint8Array): RulesRead {
  const text = decodedText(bytes);
  if (
    text.includes('\u0000') ||
    text.startsWith('PK\u0003\u0004') ||
    text.startsWith('%PDF') ||
    text.startsWith('{\\rtf')
  ) {
    throw new RangeError(
      `${file}: found a file that is no plain text, expected rules as text. Open it and save it as plain text (.txt), or copy its words into a new text file.`,
    );
  }
  if (text.length > MAX_CHARACTERS) {
    throw new RangeError(
      `${file}: found ${text.length} characters, expected at most ${MAX_CHARACTERS}. Import the rules alone, without minutes or byelaws.`,
    );
  }
  const reader = new RulesReader(file);
  const rows = text.replace(/\r\n?|\f|\v|\u2028/g, '\n').split('\n');
  for (const [index, row] of rows.entries()) reader.take(row, index + 1, rows[index + 1] ?? '');
  return { file, lines: reader.lines, unread: reader.unread };
}

class RulesReader {
  readonly lines: RuleLine[] = [];
  readonly unread: Unread[] = [];
  readonly #file: string;
  #open: OpenItems = [];
  #isAfterBlank = true;

  constructor(file: string) {
    this.#file = file;
  }

  take(row: string, line: number, below: string): void {
    const shown = row.replace(/\t/g, '    ').replace(/[\p{Cc}\p{Cf}]/gu, '');
    const indent = /^\s*/.exec(shown)![0].length;
    const text = shown.replace(/[\s\u00a0]+/gu, ' ').trim();
    if (text === '') {
      this.#isAfterBlank = true;
      return;
    }
    const furniture = furnitureOf(text);
    if (furniture !== null) {
      this.unread.push({ place: `${this.#file}, line ${line}`, what: furniture, why: 'it is no rule' });
      return;
    }
    this.#add(text, indent, line, below);
    this.#isAfterBlank = false;
  }

  #add(text: string, indent: number, line: number, below: string): void {
    const last = this.lines.at(-1) ?? null;
    const before = this.#isAfterBlank ? null : last;
    if (isHeading(text, before, below)) {
      this.#open = [];
      const words = text.replace(/^#+\s*/, '').replace(/:$/, '');
      this.lines.push({ kind: 'heading', level: 0, label: '', text: words, line });
      return;
    }
    const mark = ruleMark(text, indent, this.#open, before);
    if (mark !== null) {
      this.#open = [...this.#open.filter(({ level }) => level < mark.level), { ...mark, indent }];
      this.lines.push({ kind: 'item', ...mark, line });
      return;
    }
    const isGoingOn =
      last !== null && last.kind !== 'heading' && (before !== null || indent > (this.#open.at(-1)?.indent ?? indent));
    if (isGoingOn) {
      this.lines[this.lines.length - 1] = { ...last, text: joined(last.text, text) };
      return;
    }
    this.#open = [];
    this.lines.push({ kind: 'text', level: 0, label: '', text, line });
  }
}

/** A word that was parted at the end of a line keeps its hyphen and loses the blank. */
function joined(first: string, second: string): string {
  return /\p{L}-$/u.test(first) && /^\p{Ll}/u.test(second) ? first + second : `${first} ${second}`;
}

function furnitureOf(text: string): string | null {
  if (/^[-_=*~.\s]+$/.test(text)) return 'a ruled line';
  return /^(?:page\s+\d+(?:\s*(?:of|\/)\s*\d+)?|[-–]\s*\d{1,3}\s*[-–])$/i.test(text) ? 'the number of a page' : null;
}

/** Capitals throughout, a line ruled below, a mark of Markdown, or a few words with a colon on a line of their own. */
function isHeading(text: string, before: RuleLine | null, below: string): boolean {
  if (/^#{1,6}\s+\S/.test(text)) return true;
  if (text.length > MAX_HEADING || /[.;,]$/.test(text)) return false;
  const isApart = before === null || before.kind === 'heading' || /[.;:!?)]$/.test(before.text);
  if (!isApart) return false;
  const letters = text.replace(/[^\p{L}]/gu, '');
  if (letters.length >= 3 && letters === letters.toUpperCase() && letters !== letters.toLowerCase()) return true;
  if (/^\s*(?:-{3,}|={3,}|_{3,})\s*$/.test(below)) return true;
  return before === null && /^\p{Lu}[^:]*:$/u.test(text) && text.split(' ').length <= 5;
}
