/**
 * Characters that show nothing and do something: control characters (Unicode's Cc but tab and line feed) command a
 * terminal; line and paragraph separators start a line; the bidirectional embeddings, overrides, isolates and marks of Unicode
 * Standard Annex 9, section 2, make text read in another order than it is stored; blanks of no width, invisible operators
 * and tags make two names that look alike differ. None belongs into a venue's records. Joiners (U+200C, U+200D) are left
 * alone: some scripts and many pictographs are written with them.
 */
const BEYOND_ASCII = String.raw`\u007f-\u009f\u061c\u200b\u200e\u200f\u2028-\u202e\u2060-\u2069\ufeff]|\udb40[\udc00-\udc7f]`;
const HIDDEN = new RegExp(String.raw`[\u0000-\u0008\u000b-\u001f${BEYOND_ASCII}`);
const HIDDEN_OR_BREAK = new RegExp(String.raw`[\u0000-\u001f${BEYOND_ASCII}`, 'g');

/** The offset of the first hidden character of a text, -1 where it has none. Tabs and line breaks are none. */
export function hiddenCharacterAt(text: string): number {
  return text.search(HIDDEN);
}

/** A character by its code point, as the Unicode standard writes it: `U+202E`. */
export function codePointName(character: string): string {
  return `U+${(character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`;
}

/** Text for one line of a terminal: each hidden character, tab and line break stands as its code point, such as `<U+001B>`. */
export function visibleLine(text: string): string {
  return text.replace(HIDDEN_OR_BREAK, (character) => `<${codePointName(character)}>`);
}

/** Text of several lines for a terminal: as `visibleLine`, but its line breaks stay. */
export function visibleLines(text: string): string {
  return text.split('\n').map(visibleLine).join('\n');
}
