import type { Contact } from '../domain/venue.ts';
import type { Atlas } from './atlas.ts';
import { markdownHtml } from './markdown-html.ts';
import { dialLink } from './site-frame.ts';

/** How to reach one of the club's roles. */
export interface ContactView {
  readonly role: string;
  readonly phone: { readonly words: string; readonly href: string } | null;
  readonly email: { readonly words: string; readonly href: string } | null;
}

export interface RulesPage {
  readonly club: string;
  /** Sanitised HTML of the body of `venue.md`; empty where it has none. */
  readonly rulesHtml: string;
  readonly contacts: readonly ContactView[];
}

/** The venue's own rules and who to ask. */
export function rulesPage({ venue: { settings } }: Atlas): RulesPage {
  return {
    club: settings.club,
    rulesHtml: markdownHtml(settings.rulesMarkdown, 2),
    contacts: settings.contacts.map(contactView),
  };
}

function contactView({ role, phone, email }: Contact): ContactView {
  return {
    role,
    phone: phone === undefined ? null : { words: phone, href: dialLink(phone) },
    email: email === undefined ? null : { words: email, href: `mailto:${email}` },
  };
}
