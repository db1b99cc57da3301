import { venueId } from '../content/round-file/record-version.ts';
import { formatDay } from '../domain/day.ts';
import type { Venue } from '../domain/venue.ts';
import { atomFeed, escapeXml } from './feeds/atom.ts';
import { findingEntries } from './finding-entries.ts';
import { markdownHtml } from './markdown-html.ts';
import { type NoticeView, noticesPage } from './notices-page.ts';

/**
 * The bank notices as an Atom feed, the latest first, and after them what was found at no peg.
 * @param absolute the full address of a path of the guide
 */
export function noticesFeed(venue: Venue, absolute: (path: string) => string): string {
  const { live, upcoming, past } = noticesPage(venue);
  const { name, club, guideDay } = venue.settings;
  const notices = [...upcoming, ...live, ...past].sort((a, b) => b.from.localeCompare(a.from));
  return atomFeed({
    owner: venueId(name, club),
    title: `Bank notices, ${name}`,
    subtitle: `Hazards, closures and works, by ${club}`,
    url: absolute('notices/feed.xml'),
    homeUrl: absolute('notices/'),
    author: club,
    emptySince: guideDay,
    entries: [
      ...notices.map((notice) => ({
        id: notice.id,
        title: `${endedWord(notice)}${notice.kindWord}: ${notice.title}`,
        url: absolute(`notices/#${notice.id}`),
        changedOn: notice.changedOn,
        html: `<p>${escapeXml(`${notice.about}, ${notice.days}${endedWords(notice)}`)}</p>${markdownHtml(notice.markdown, 3)}`,
      })),
      ...findingEntries(venue.waters, absolute),
    ],
  });
}

function endedWord({ state, cancelledOn }: NoticeView): string {
  if (cancelledOn !== null) return 'Cancelled. ';
  return state === 'replaced' ? 'Replaced. ' : '';
}

function endedWords({ state, cancelledOn, replacedFrom }: NoticeView): string {
  if (cancelledOn !== null) return `; cancelled on ${formatDay(cancelledOn)}`;
  return state === 'replaced' && replacedFrom !== null ? `; replaced on ${formatDay(replacedFrom)}` : '';
}
