import { fillWords } from '../words/fill-words.ts';
import type { WordKey } from '../words/languages.ts';
import type { Say, WordValues } from '../words/say.ts';

/** For what a script says in English in every guide, since it keeps somebody safe: the `lang` of its element. */
export const ENGLISH = 'en-GB';

let words: Readonly<Record<string, string>> | null = null;

/** Says something in the language of the page, by the messages that stand in it. Throws where the page does not hold one. */
export const say: Say = (key, values = {}) => {
  words ??= JSON.parse(document.querySelector('#page-words')?.textContent ?? '{}') as Readonly<Record<string, string>>;
  const message = words[key];
  if (message === undefined) throw new Error(`The page has no words ${key}.`);
  return fillWords(message, values, document.documentElement.lang);
};

/** Something to say, for who knows the voice: a message by its key, and the values of its places. */
export interface Said {
  readonly key: WordKey;
  readonly values?: WordValues;
}

/** All of a list of things to say, one after another; in the voice of the page where no other is given. */
export function sayAll(said: readonly Said[], voice: Say = say): string {
  return said.map(({ key, values }) => voice(key, values)).join(' ');
}
