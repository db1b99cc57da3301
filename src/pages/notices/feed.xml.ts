import type { APIRoute } from 'astro';
import { loadAtlas } from '../../atlas/load-atlas.ts';
import { noticesFeed } from '../../atlas/notices-feed.ts';
import { siteLink } from '../../atlas/site-link.ts';

/** Without a stated address the links of the feed stand on this host, which no reader can follow: `address` mends it. */
const NO_ADDRESS = 'http://localhost';

export const GET: APIRoute = async ({ site }) => {
  const { venue } = await loadAtlas();
  const feed = noticesFeed(venue, (path) => new URL(siteLink(path), site ?? NO_ADDRESS).href);
  return new Response(feed, { headers: { 'content-type': 'application/atom+xml; charset=utf-8' } });
};
