/** What one pass over a JSON text finds (RFC 8259); offsets count characters. */
export interface JsonScan {
  /** The first character that cannot be JSON, the text's length where it ends too early, null where it is sound. */
  readonly brokenAt: number | null;
  /** Where brackets stand deeper in one another than is read; null where they do not. */
  readonly tooDeepAt: number | null;
  /** Members whose name was in their object before: a reader keeps one of the two, and drops the other without a word. */
  readonly doubled: readonly { readonly offset: number; readonly name: string }[];
}

/** Brackets in brackets: a map needs nine. */
export const MAX_LEVELS = 64;

const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][-+]?\d+)?/y;
const LITERAL = /true|false|null/y;
const BLANK = /[ \t\n\r]*/y;

/** Reads a JSON text from its first character to its last, without calling itself: time grows with its length alone. */
export function scanJson(text: string): JsonScan {
  const doubled: { offset: number; name: string }[] = [];
  /** Names met in each open object; null for an open list. */
  const open: (Set<string> | null)[] = [];
  let at = 0;
  const ended = (brokenAt: number | null, tooDeepAt: number | null = null): JsonScan => ({
    brokenAt,
    tooDeepAt,
    doubled,
  });
  const passes = (pattern: RegExp): boolean => {
    pattern.lastIndex = at;
    if (!pattern.test(text)) return false;
    at = pattern.lastIndex;
    return true;
  };
  /** Passes `"name":` and notes the name. */
  const passesName = (names: Set<string>): boolean => {
    const offset = at;
    if (text[at] !== '"' || !passesString()) return false;
    const name = JSON.parse(text.slice(offset, at)) as string;
    if (names.has(name)) doubled.push({ offset, name });
    names.add(name);
    passes(BLANK);
    if (text[at] !== ':') return false;
    at++;
    passes(BLANK);
    return true;
  };
  const passesString = (): boolean => {
    const { isWhole, end } = passString(text, at);
    at = end;
    return isWhole;
  };

  passes(BLANK);
  for (;;) {
    // A value begins here.
    const start = at;
    const first = text[at];
    if (first === '{' || first === '[') {
      if (open.length === MAX_LEVELS) return ended(null, at);
      open.push(first === '{' ? new Set() : null);
      at++;
      passes(BLANK);
      const isEmpty = text[at] === (first === '{' ? '}' : ']');
      if (!isEmpty) {
        const names = open.at(-1);
        if (names != null && !passesName(names)) return ended(at);
        continue;
      }
      open.pop();
      at++;
    } else if (first === '"') {
      if (!passesString()) return ended(at);
    } else if (!passes(NUMBER) && !passes(LITERAL)) return ended(isCutShort(text, start) ? text.length : at);
    // A value ended here.
    for (;;) {
      passes(BLANK);
      if (open.length === 0) return ended(at === text.length ? null : isCutShort(text, start) ? text.length : at);
      const names = open.at(-1) ?? null;
      if (text[at] === ',') {
        at++;
        passes(BLANK);
        if (names !== null && !passesName(names)) return ended(at);
        break;
      }
      if (text[at] !== (names === null ? ']' : '}')) return ended(isCutShort(text, start) ? text.length : at);
      open.pop();
      at++;
    }
  }
}

/** Whether nothing but the start of a number or a word stands from an offset to the end of the text. */
function isCutShort(text: string, start: number): boolean {
  const rest = text.slice(start, start + LONGEST_START);
  if (rest.length === LONGEST_START) return false;
  return /^-?\d*\.?\d*[eE]?[-+]?$/.test(rest) || ['true', 'false', 'null'].some((word) => word.startsWith(rest));
}

const LONGEST_START = 40;
const ESCAPE = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y;

/** Passes the string that begins at an offset: where it ends, or the character that is wrong in it. */
export function passString(text: string, start: number): { readonly isWhole: boolean; readonly end: number } {
  for (let at = start + 1; at < text.length; ) {
    const character = text[at]!;
    if (character === '"') return { isWhole: true, end: at + 1 };
    if (character < ' ') return { isWhole: false, end: at };
    if (character !== '\\') {
      at++;
      continue;
    }
    ESCAPE.lastIndex = at;
    if (!ESCAPE.test(text)) {
      return { isWhole: false, end: /^\\(?:u[0-9a-fA-F]{0,3})?$/.test(text.slice(at, at + 6)) ? text.length : at };
    }
    at = ESCAPE.lastIndex;
  }
  return { isWhole: false, end: text.length };
}
