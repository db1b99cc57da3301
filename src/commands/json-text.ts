import { hiddenCharacterAt } from '../domain/hidden-characters.ts';

/** A value as indented JSON in which every hidden character is written as an escape, so that a terminal shows it and a program reads it. */
export function jsonText(value: unknown): string {
  const text = JSON.stringify(value, null, 2);
  if (hiddenCharacterAt(text) === -1) return text;
  return text.replace(
    /[\u007f-\u009f\u061c\u200b\u200e\u200f\u2028-\u202e\u2060-\u2069\ufeff]|\udb40[\udc00-\udc7f]/g,
    (character) =>
      [...Array(character.length).keys()]
        .map((i) => `\\u${character.charCodeAt(i).toString(16).padStart(4, '0')}`)
        .join(''),
  );
}
