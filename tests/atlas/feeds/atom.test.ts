import { describe, expect, it } from 'vitest';
import { atomFeed, escapeXml } from '../../../src/atlas/feeds/atom.ts';

describe('an Atom feed', () => {
  const feed = atomFeed({
    title: 'Notices & news',
    subtitle: 'of the venue',
    url: 'https://club.example/guide/notices/feed.xml',
    homeUrl: 'https://club.example/guide/notices/',
    author: 'The club',
    updated: '2026-11-21',
    entries: [
      {
        id: '2026-11-02-boards',
        title: 'Boards <off>',
        url: 'https://club.example/guide/notices/#boards',
        updated: '2026-11-02',
        html: '<p>Mind the "gap" & the edge</p>',
      },
    ],
  });

  // RFC 4287, 4.1.1 and 4.1.2: what a feed and an entry must hold.
  it('holds id, title, updated and author, and each entry its own', () => {
    expect(feed).toContain('<id>tag:club.example,2026:notices</id>');
    expect(feed).toContain('<title>Notices &amp; news</title>');
    expect(feed).toContain('<updated>2026-11-21T00:00:00Z</updated>');
    expect(feed).toContain('<author><name>The club</name></author>');
    expect(feed).toContain('<id>tag:club.example,2026:2026-11-02-boards</id>');
    expect(feed).toContain('<title>Boards &lt;off&gt;</title>');
  });

  it('carries HTML as escaped text', () => {
    expect(feed).toContain('&lt;p&gt;Mind the &quot;gap&quot; &amp; the edge&lt;/p&gt;');
  });

  it('leaves out control characters that XML cannot carry', () => {
    expect(escapeXml('a\u0000b\u0008c\u2028d🐟')).toBe('abc\u2028d🐟');
  });
});
