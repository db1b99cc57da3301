import type { Fault } from '../fault.ts';
import { faultOfFile } from './source.ts';
import { placeAtOffset } from './text-place.ts';

/** Text ready to be read: no byte order mark, every line ended by a line feed. Lines and columns stay what they were. */
export function plainText(text: string): string {
  return text.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n');
}

/** Characters no text file of a venue holds; with them a file is not what it seems. Expects plain text. */
export function controlCharacterFaults(file: string, text: string): readonly Fault[] {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are looked for
  const offset = text.search(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f]/);
  if (offset === -1) return [];
  const code = text.charCodeAt(offset).toString(16).toUpperCase().padStart(4, '0');
  return [
    faultOfFile(
      file,
      {
        rule: 'file-characters',
        found: `the control character U+${code}`,
        expected: 'text',
        mend: 'Delete it, or save the file again as UTF-8 text from the program that made it.',
      },
      placeAtOffset(text, offset),
    ),
  ];
}
