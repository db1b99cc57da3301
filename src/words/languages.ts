import type { Language } from '../domain/language.ts';
import cyFrame from './cy/frame.json' with { type: 'json' };
import cyHome from './cy/home.json' with { type: 'json' };
import cySheet from './cy/sheet.json' with { type: 'json' };
import enFrame from './en/frame.json' with { type: 'json' };
import enHome from './en/home.json' with { type: 'json' };
import enSheet from './en/sheet.json' with { type: 'json' };

const english = { ...enFrame, ...enHome, ...enSheet };

/** What there is to say on an angler's pages. English has all of it. */
export type WordKey = keyof typeof english;

/** A language of the guide: a folder of messages (ICU MessageFormat, one object a file) beside this file, and its line below. */
export interface LanguageFile {
  /** Its own name, as its speakers write it. */
  readonly name: string;
  /** For the page's `lang` and for its plurals: a BCP 47 tag. */
  readonly tag: string;
  /** A native reader has read it through. What nobody read says so on every page. */
  readonly reviewed: boolean;
  /** What is not among them is said in English. */
  readonly messages: Readonly<Partial<Record<WordKey, string>>>;
}

export const LANGUAGES = {
  en: { name: 'English', tag: 'en-GB', reviewed: true, messages: english },
  cy: { name: 'Cymraeg', tag: 'cy', reviewed: false, messages: { ...cyFrame, ...cyHome, ...cySheet } },
} as const satisfies Readonly<Record<Language, LanguageFile>>;
