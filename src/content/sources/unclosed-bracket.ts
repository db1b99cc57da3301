const CLOSING: Readonly<Record<string, string>> = { '[': ']', '{': '}' };

/**
 * The offset of the innermost bracket, brace or quotation mark that is opened before an offset of a YAML text and not
 * closed there; null where there is none. Quotation marks count only where a value may begin, and comments not at all.
 */
export function unclosedBefore(text: string, end: number): number | null {
  const open: { readonly offset: number; readonly closing: string }[] = [];
  for (let at = 0; at < end; at++) {
    const character = text[at]!;
    const before = text[at - 1] ?? '\n';
    if (character === '#' && /\s/.test(before)) {
      const lineBreak = text.indexOf('\n', at);
      if (lineBreak === -1) break;
      at = lineBreak;
    } else if ((character === '"' || character === "'") && /[\s[{,]/.test(before)) {
      const close = closingQuote(text, at, end);
      if (close === null) return at;
      at = close;
    } else if (CLOSING[character] !== undefined && (open.length > 0 || /\s/.test(before))) {
      open.push({ offset: at, closing: CLOSING[character] });
    } else if (character === open.at(-1)?.closing) open.pop();
  }
  return open.at(-1)?.offset ?? null;
}

function closingQuote(text: string, start: number, end: number): number | null {
  const quote = text[start];
  for (let at = start + 1; at < end; at++) {
    if (text[at] === '\\' && quote === '"') at++;
    else if (text[at] === quote) {
      if (quote === '"' || text[at + 1] !== quote) return at;
      at++;
    }
  }
  return null;
}
