import { formatDay } from '../domain/day.ts';
import { standOffWords } from '../domain/overhead-line-words.ts';
import { dayWords } from '../words/day-words.ts';
import type { WordKey } from '../words/languages.ts';
import { sayIn } from '../words/say.ts';
import type { Atlas } from './atlas.ts';
import { bookletIndex, type IndexPart } from './booklet-index.ts';
import { type NoticeView, noticesPage } from './notices-page.ts';
import { type PegMention, pegMention } from './peg-mention.ts';
import { type ClosedPegs, safetyPage } from './safety-page.ts';
import { siteLink, waterLink } from './site-link.ts';

/** A page of the guide that the booklet holds; behind a water's come the sheets of its pegs. */
interface BookletPart {
  readonly name: string;
  readonly href: string;
  /** What follows it, a leaf each. */
  readonly sheets: readonly PegMention[];
}

/** What the booklet has of its own: cover, contents and index. All else is pages of the guide. */
interface BookletPage {
  readonly venueName: string;
  readonly club: string;
  /** As what closes a peg says it, in English. */
  readonly dataTo: string;
  /** "Data to 21 Nov 2026", in the language of the page. */
  readonly dataToWords: string;
  readonly isInvented: boolean;
  readonly parts: readonly BookletPart[];
  /** What closes a peg, a sentence each. */
  readonly closers: readonly string[];
  readonly closed: readonly ClosedPegs[];
  /** Closures that paper outlives: those that end, and those to come. */
  readonly dated: readonly NoticeView[];
  readonly index: readonly IndexPart[];
}

/** What stands in the booklet around the guide's own pages: safety before all else, the sheets behind their water. */
export function bookletPage(atlas: Atlas): BookletPage {
  const { settings, waters } = atlas.venue;
  const { live, upcoming } = noticesPage(atlas.venue);
  const say = sayIn(settings.language);
  const page = (name: WordKey, path: string): BookletPart => ({ name: say(name), href: siteLink(path), sheets: [] });
  const standOff = standOffWords(settings.standOff.metres, settings.units);
  const sheetsOf = (water: string) => (atlas.pegsByWater.get(water) ?? []).map((peg) => pegMention(atlas, peg));
  return {
    venueName: settings.name,
    club: settings.club,
    dataTo: formatDay(settings.guideDay),
    dataToWords: say('booklet.dataTo', { day: dayWords(settings.guideDay, say) }),
    isInvented: settings.invented,
    parts: [
      page('contents.safety', 'safety/'),
      page('contents.notices', 'notices/'),
      ...waters.map(({ id, name }) => ({ name, href: waterLink(id), sheets: sheetsOf(id) })),
      page('contents.features', 'features/'),
      page('contents.rules', 'rules/'),
    ],
    closers: [
      'The club closes it in its record, or by a notice for the days of the notice.',
      `An overhead line is nearer than ${standOff} to the platform or to anything swept from it, or nobody knows how near it is.`,
      'Its platform must not be used.',
      'A hazard found there closes pegs by its kind or its risk, and the club has not decided otherwise on the sheet.',
    ],
    closed: safetyPage(atlas).closed.filter(({ standing }) => standing.closed !== null),
    dated: [...live.filter(({ until }) => until !== null), ...upcoming].filter(({ kind }) => kind === 'closure'),
    index: bookletIndex(atlas),
  };
}
