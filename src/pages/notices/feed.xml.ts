import type { APIRoute } from 'astro';
import { atomFeed } from '../../atlas/feeds/atom.ts';
import { loadAtlas } from '../../atlas/load-atlas.ts';
import { markdownHtml } from '../../atlas/markdown-html.ts';
import { noticesPage } from '../../atlas/notices-page.ts';
import { siteLink } from '../../atlas/site-link.ts';

/** Without a stated address the links of the feed stand on this host, which no reader can follow: `address` mends it. */
const NO_ADDRESS = 'http://localhost';

export const GET: APIRoute = async ({ site }) => {
  const { venue } = await loadAtlas();
  const { live, upcoming, past } = noticesPage(venue);
  const absolute = (path: string) => new URL(siteLink(path), site ?? NO_ADDRESS).href;
  const notices = [...upcoming, ...live, ...past].sort((a, b) => b.from.localeCompare(a.from));
  const feed = atomFeed({
    title: `Bank notices, ${venue.settings.name}`,
    subtitle: `Hazards, closures and works, by ${venue.settings.club}`,
    url: absolute('notices/feed.xml'),
    homeUrl: absolute('notices/'),
    author: venue.settings.club,
    updated: venue.settings.guideDay,
    entries: notices.map((notice) => ({
      id: notice.id,
      title: `${notice.kindWord}: ${notice.title}`,
      url: absolute(`notices/#${notice.id}`),
      updated: notice.from,
      html: markdownHtml(notice.markdown, 3),
    })),
  });
  return new Response(feed, { headers: { 'content-type': 'application/atom+xml; charset=utf-8' } });
};
