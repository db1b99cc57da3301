import type { APIRoute } from 'astro';
import { dueCalendar, dueList } from '../../atlas/due-list.ts';
import { iCalendar } from '../../atlas/feeds/icalendar.ts';
import { loadAtlas } from '../../atlas/load-atlas.ts';
import { siteLink } from '../../atlas/site-link.ts';
import { venueId } from '../../content/round-file/record-version.ts';

export const GET: APIRoute = async ({ site }) => {
  const atlas = await loadAtlas();
  const { guideDay, name, club } = atlas.venue.settings;
  const page = site === undefined ? null : new URL(siteLink('due/'), site).href;
  const calendar = iCalendar(
    `Checks due, ${name}`,
    guideDay,
    dueCalendar(atlas, dueList(atlas), venueId(name, club), page),
  );
  return new Response(calendar, { headers: { 'content-type': 'text/calendar; charset=utf-8' } });
};
