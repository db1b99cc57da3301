import fc from 'fast-check';
import { expect, test } from 'vitest';
import { hiddenCharacterAt, visibleLine } from '../../src/domain/hidden-characters.ts';

test.each([
  ['\u001b[2K\rcontent is clean', '<U+001B>[2K<U+000D>content is clean'],
  ['two\nlines', 'two<U+000A>lines'],
  ['\u202egnp.exe', '<U+202E>gnp.exe'],
  ['\u2028forged', '<U+2028>forged'],
  ['the\u200bgate\u200f', 'the<U+200B>gate<U+200F>'],
  ['tag \u{e0041}', 'tag <U+E0041>'],
  ['👩‍🌾 می‌خواهم', '👩‍🌾 می‌خواهم'],
  ['Peg 14a, Osier’s é 木 🎣', 'Peg 14a, Osier’s é 木 🎣'],
])('%j stands on one line as %s', (text, line) => {
  expect(visibleLine(text)).toBe(line);
});

test('no text at all commands a terminal or begins a line of its own', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary', maxLength: 60 }), (text) => {
      // Unicode's own class of control characters (general category Cc), and the property Bidi_Control but for the plain marks.
      expect(visibleLine(text)).not.toMatch(/[\p{Cc}\u2028\u2029\u202a-\u202e\u2066-\u2069]/u);
      expect(hiddenCharacterAt(visibleLine(text))).toBe(-1);
    }),
  );
});
