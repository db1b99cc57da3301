import { IntlMessageFormat } from 'intl-messageformat';
import type { Language } from '../domain/language.ts';
import { LANGUAGES, type LanguageFile, type WordKey } from './languages.ts';

/** Values of a message's places: text and numbers alone, so that nothing in them is ever read as markup. */
export type WordValues = Readonly<Record<string, string | number>>;

/** Says something in the language of the guide. Throws where a value of the message is not given. */
export type Say = (key: WordKey, values?: WordValues) => string;

const known = new Map<LanguageFile, Say>();

/** The voice of a language; the same one at every call. */
export function sayIn(language: Language): Say {
  return sayOf(LANGUAGES[language]);
}

/** The voice of a file of words. What it does not hold is said in English. */
export function sayOf(language: LanguageFile): Say {
  const before = known.get(language);
  if (before !== undefined) return before;
  const formats = new Map<WordKey, IntlMessageFormat>();
  const say: Say = (key, values = {}) => {
    const format = formats.get(key) ?? formatOf(language, key);
    formats.set(key, format);
    return String(format.format({ ...values }));
  };
  known.set(language, say);
  return say;
}

/** English, for pages that are the club's own and not yet put into other languages. */
export const inEnglish: Say = sayIn('en');

/**
 * The messages that a page gives its scripts, English where the language does not hold one.
 * @param of keys, or what keys begin with up to a stop
 */
export function wordsForScripts(language: Language, of: readonly string[]): Readonly<Record<string, string>> {
  const { messages }: LanguageFile = LANGUAGES[language];
  const english = Object.entries(LANGUAGES.en.messages) as [WordKey, string][];
  return Object.fromEntries(
    english
      .filter(([key]) => of.some((each) => key === each || key.startsWith(`${each}.`)))
      .map(([key, words]) => [key, messages[key] ?? words]),
  );
}

function formatOf({ tag, messages }: LanguageFile, key: WordKey): IntlMessageFormat {
  const message = messages[key];
  return message === undefined
    ? new IntlMessageFormat(LANGUAGES.en.messages[key], LANGUAGES.en.tag)
    : new IntlMessageFormat(message, tag, undefined, { ignoreTag: true });
}
