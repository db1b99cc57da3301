import type { Venue } from '../domain/venue.ts';
import { atomFeed, escapeXml } from './feeds/atom.ts';
import { markdownHtml } from './markdown-html.ts';
import { noticesPage } from './notices-page.ts';

/**
 * The bank notices as an Atom feed, the latest first.
 * @param absolute the full address of a path of the guide
 */
export function noticesFeed(venue: Venue, absolute: (path: string) => string): string {
  const { live, upcoming, past } = noticesPage(venue);
  const { name, club, guideDay } = venue.settings;
  const notices = [...upcoming, ...live, ...past].sort((a, b) => b.from.localeCompare(a.from));
  return atomFeed({
    title: `Bank notices, ${name}`,
    subtitle: `Hazards, closures and works, by ${club}`,
    url: absolute('notices/feed.xml'),
    homeUrl: absolute('notices/'),
    author: club,
    updated: guideDay,
    entries: notices.map((notice) => ({
      id: notice.id,
      title: `${notice.kindWord}: ${notice.title}`,
      url: absolute(`notices/#${notice.id}`),
      // An entry may not be dated later than the feed: an upcoming notice was written by the day of the guide.
      updated: notice.state === 'upcoming' ? guideDay : notice.from,
      html: `<p>${escapeXml(`${notice.about}, ${notice.days}`)}</p>${markdownHtml(notice.markdown, 3)}`,
    })),
  });
}
