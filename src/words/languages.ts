import type { Language } from '../domain/language.ts';
import cyCompare from './cy/compare.json' with { type: 'json' };
import cyDraw from './cy/draw.json' with { type: 'json' };
import cyFrame from './cy/frame.json' with { type: 'json' };
import cyHome from './cy/home.json' with { type: 'json' };
import cyPaper from './cy/paper.json' with { type: 'json' };
import cySearch from './cy/search.json' with { type: 'json' };
import cySheet from './cy/sheet.json' with { type: 'json' };
import cyTyped from './cy/typed.json' with { type: 'json' };
import enCompare from './en/compare.json' with { type: 'json' };
import enDraw from './en/draw.json' with { type: 'json' };
import enFrame from './en/frame.json' with { type: 'json' };
import enHome from './en/home.json' with { type: 'json' };
import enPaper from './en/paper.json' with { type: 'json' };
import enSearch from './en/search.json' with { type: 'json' };
import enSheet from './en/sheet.json' with { type: 'json' };
import enTyped from './en/typed.json' with { type: 'json' };

const english = {
  ...enFrame,
  ...enHome,
  ...enSheet,
  ...enTyped,
  ...enSearch,
  ...enCompare,
  ...enDraw,
  ...enPaper,
};
const welsh = { ...cyFrame, ...cyHome, ...cySheet, ...cyTyped, ...cySearch, ...cyCompare, ...cyDraw, ...cyPaper };

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
  cy: { name: 'Cymraeg', tag: 'cy', reviewed: false, messages: welsh },
} as const satisfies Readonly<Record<Language, LanguageFile>>;
