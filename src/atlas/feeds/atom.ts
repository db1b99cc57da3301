import { createHash } from 'node:crypto';
import type { Day } from '../../domain/day.ts';

export interface FeedEntry {
  /** Stable part of the entry's id. */
  readonly id: string;
  readonly title: string;
  readonly url: string;
  /** The day it last changed. */
  readonly changedOn: Day;
  /** Sanitised HTML. */
  readonly html: string;
}

export interface Feed {
  /** What keeps the ids of two clubs apart, whatever address the feed is read from. */
  readonly owner: string;
  readonly title: string;
  readonly subtitle: string;
  readonly url: string;
  readonly homeUrl: string;
  readonly author: string;
  /** Says when the feed last changed while it has no entry. */
  readonly emptySince: Day;
  readonly entries: readonly FeedEntry[];
}

const SECONDS_PER_DAY = 86_400;

/**
 * An Atom feed (RFC 4287). Ids are name-based UUIDs (RFC 9562, version 5) of the owner and the entry's own id, without an
 * address, so that a moved guide keeps its entries. `updated` changes when, and only when, the entry does: its day is the
 * day of the change, and since a build has no clock, the time of that day is worked out from the entry's words, so that an
 * entry reworded without a word about the day changes too.
 */
export function atomFeed(feed: Feed): string {
  const idOf = (specific: string) => `urn:uuid:${nameBasedUuid(`${feed.owner}/${specific}`)}`;
  const updated = feed.entries.map(updatedAt);
  const latest = [...updated].sort().at(-1) ?? `${feed.emptySince}T00:00:00Z`;
  const entries = feed.entries.map((entry, index) =>
    [
      '  <entry>',
      `    <id>${escapeXml(idOf(entry.id))}</id>`,
      `    <title>${escapeXml(entry.title)}</title>`,
      `    <link rel="alternate" type="text/html" href="${escapeXml(entry.url)}"/>`,
      `    <updated>${updated[index]}</updated>`,
      `    <content type="html">${escapeXml(entry.html)}</content>`,
      '  </entry>',
    ].join('\n'),
  );
  return [
    '<?xml version="1.0" encoding="utf-8"?>',
    '<feed xmlns="http://www.w3.org/2005/Atom" xml:lang="en-GB">',
    `  <id>${escapeXml(idOf('feed'))}</id>`,
    `  <title>${escapeXml(feed.title)}</title>`,
    `  <subtitle>${escapeXml(feed.subtitle)}</subtitle>`,
    `  <link rel="self" type="application/atom+xml" href="${escapeXml(feed.url)}"/>`,
    `  <link rel="alternate" type="text/html" href="${escapeXml(feed.homeUrl)}"/>`,
    `  <author><name>${escapeXml(feed.author)}</name></author>`,
    `  <updated>${latest}</updated>`,
    ...entries,
    '</feed>',
    '',
  ].join('\n');
}

function updatedAt({ changedOn, title, url, html }: FeedEntry): string {
  // The fragment alone of the address: where the guide is published is no change of the notice.
  const words = JSON.stringify([title, url.slice(url.indexOf('#')), html]);
  const second = createHash('sha256').update(words).digest().readUInt32BE(0) % SECONDS_PER_DAY;
  return `${changedOn}T${new Date(second * 1000).toISOString().slice(11, 19)}Z`;
}

/** A name space of our own, drawn once. */
const NAME_SPACE = Buffer.from('7d0b6a5e4f1c4c0a9a3f5b8e2c61d794', 'hex');

function nameBasedUuid(name: string): string {
  const bytes = createHash('sha1').update(NAME_SPACE).update(name).digest().subarray(0, 16);
  bytes[6] = ((bytes[6] as number) & 0x0f) | 0x50;
  bytes[8] = ((bytes[8] as number) & 0x3f) | 0x80;
  return bytes.toString('hex').replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, '$1-$2-$3-$4-$5');
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
