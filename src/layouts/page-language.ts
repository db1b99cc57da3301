import type { Language } from '../domain/language.ts';
import { LANGUAGES } from '../words/languages.ts';
import { type Say, sayIn } from '../words/say.ts';

/** The routes that speak the venue's language: an angler's own. The club's pages (register, checks, workings, matches) speak English. */
const TRANSLATED_ROUTES: ReadonlySet<string> = new Set([
  '/',
  '/[water]/[peg]',
  '/search',
  '/compare/[water]',
  '/draw/[water]',
  '/paper/booklet',
  '/paper/cards/[water]',
  '/paper/plates/[water]',
]);

/** In which language a page speaks. */
export interface PageLanguage {
  readonly say: Say;
  /** What it speaks, of the languages of the guide. */
  readonly spoken: Language;
  /** Of the page: a BCP 47 tag. */
  readonly tag: string;
  /** For parts that stay English whatever the page: undefined where the page is English itself. */
  readonly englishPart: string | undefined;
  readonly reviewed: boolean;
}

/** The language of the page at a route. @param language the venue's */
export function pageLanguage(language: Language, routePattern: string): PageLanguage {
  const spoken = TRANSLATED_ROUTES.has(routePattern.replace(/(.)\/$/, '$1')) ? language : 'en';
  const { tag, reviewed } = LANGUAGES[spoken];
  return { say: sayIn(spoken), spoken, tag, reviewed, englishPart: spoken === 'en' ? undefined : LANGUAGES.en.tag };
}
