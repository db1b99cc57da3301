import type { Day } from '../../domain/day.ts';

export interface FeedEntry {
  /** Stable part of the entry's id. */
  readonly id: string;
  readonly title: string;
  readonly url: string;
  readonly updated: Day;
  /** Sanitised HTML. */
  readonly html: string;
}

export interface Feed {
  readonly title: string;
  readonly subtitle: string;
  readonly url: string;
  readonly homeUrl: string;
  readonly author: string;
  readonly updated: Day;
  readonly entries: readonly FeedEntry[];
}

/** An Atom feed (RFC 4287). Ids are tag URIs (RFC 4151) built from the host, so that a moved page keeps its entry. */
export function atomFeed(feed: Feed): string {
  const host = URL.canParse(feed.homeUrl) ? new URL(feed.homeUrl).hostname : 'localhost';
  const tag = (specific: string) => `tag:${host},2026:${encodeURI(specific)}`;
  const entries = feed.entries.map((entry) =>
    [
      '  <entry>',
      `    <id>${escapeXml(tag(entry.id))}</id>`,
      `    <title>${escapeXml(entry.title)}</title>`,
      `    <link rel="alternate" type="text/html" href="${escapeXml(entry.url)}"/>`,
      `    <updated>${entry.updated}T00:00:00Z</updated>`,
      `    <content type="html">${escapeXml(entry.html)}</content>`,
      '  </entry>',
    ].join('\n'),
  );
  return [
    '<?xml version="1.0" encoding="utf-8"?>',
    '<feed xmlns="http://www.w3.org/2005/Atom" xml:lang="en-GB">',
    `  <id>${escapeXml(tag('notices'))}</id>`,
    `  <title>${escapeXml(feed.title)}</title>`,
    `  <subtitle>${escapeXml(feed.subtitle)}</subtitle>`,
    `  <link rel="self" type="application/atom+xml" href="${escapeXml(feed.url)}"/>`,
    `  <link rel="alternate" type="text/html" href="${escapeXml(feed.homeUrl)}"/>`,
    `  <author><name>${escapeXml(feed.author)}</name></author>`,
    `  <updated>${feed.updated}T00:00:00Z</updated>`,
    ...entries,
    '</feed>',
    '',
  ].join('\n');
}

/** Escapes text for XML, and leaves out the control characters that XML 1.0 cannot carry at all. */
export function escapeXml(text: string): string {
  return text
    .replace(/[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu, '')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}
