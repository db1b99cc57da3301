import type { APIRoute } from 'astro';
import { loadAtlas } from '../../atlas/load-atlas.ts';
import { noticesFeed } from '../../atlas/notices-feed.ts';
import { siteLink } from '../../atlas/site-link.ts';

export const GET: APIRoute = async ({ site }) => {
  const { venue } = await loadAtlas();
  // Without a stated address the links are relative to wherever the feed was read from (RFC 4287, section 2).
  const feed = noticesFeed(venue, (path) => (site === undefined ? siteLink(path) : new URL(siteLink(path), site).href));
  return new Response(feed, { headers: { 'content-type': 'application/atom+xml; charset=utf-8' } });
};
