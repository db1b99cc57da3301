import { LANGUAGES, type LanguageFile, type WordKey } from '../../src/words/languages.ts';

/** What a language does not say yet, in the order of the English files: each is said in English until it does. */
export function missingKeys({ messages }: LanguageFile): readonly WordKey[] {
  return (Object.keys(LANGUAGES.en.messages) as WordKey[]).filter((key) => !(key in messages));
}
