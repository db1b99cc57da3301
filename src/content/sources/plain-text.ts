import { codePointName, hiddenCharacterAt } from '../../domain/hidden-characters.ts';
import type { Fault } from '../fault.ts';
import { type FieldFault, faultOfFile } from './source.ts';
import { placeAtOffset } from './text-place.ts';

/** Text ready to be read: no byte order mark, every line ended by a line feed. Lines and columns stay what they were. */
export function plainText(text: string): string {
  return text.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n');
}

/** Characters no text file of a venue holds; with them a file is not what it seems. Expects plain text. */
export function controlCharacterFaults(file: string, text: string): readonly Fault[] {
  const offset = hiddenCharacterAt(text);
  if (offset === -1) return [];
  return [
    faultOfFile(
      file,
      {
        ...hiddenCharacterRule(codePointName(text.slice(offset))),
        rule: 'file-characters',
        mend: 'Delete it, or save the file again as UTF-8 text from the program that made it.',
      },
      placeAtOffset(text, offset),
    ),
  ];
}

/** The code point of the first hidden character of a value, null where it has none. */
export function hiddenCharacterIn(value: string): string | null {
  const offset = hiddenCharacterAt(value);
  return offset === -1 ? null : codePointName(value.slice(offset));
}

/** What is wrong with a value that holds a hidden character, written as an escape. */
export function hiddenCharacterRule(code: string): FieldFault {
  return {
    rule: 'text-characters',
    found: foundHidden(code),
    expected: 'text',
    mend: 'Delete it: it is not seen, and changes what a reader sees.',
  };
}

function foundHidden(code: string): string {
  if (/^U\+(?:061C|200[EF]|202[89A-E]|206[6-9])$/.test(code))
    return `the character ${code}, which turns the order of text or breaks its line`;
  return /^U\+00/.test(code) ? `the control character ${code}` : `the character ${code}, which has no width`;
}
