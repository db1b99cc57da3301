import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { atomFeed, escapeXml, type Feed } from '../../../src/atlas/feeds/atom.ts';

describe('an Atom feed', () => {
  const FEED: Feed = {
    title: 'Notices & news',
    subtitle: 'of the venue',
    url: 'https://club.example/guide/notices/feed.xml',
    homeUrl: 'https://club.example/guide/notices/',
    author: 'The club',
    owner: 'abc',
    emptySince: '2026-11-21',
    entries: [
      {
        id: '2026-11-02-boards',
        title: 'Boards <off>',
        url: 'https://club.example/guide/notices/#boards',
        changedOn: '2026-11-02',
        html: '<p>Mind the "gap" & the edge</p>',
      },
    ],
  };
  const feed = atomFeed(FEED);
  const [entry] = FEED.entries;
  const updatedOf = (text: string) => [...text.matchAll(/<updated>(.*?)<\/updated>/g)].map(([, at]) => at);
  const idsOf = (text: string) => [...text.matchAll(/<id>(.*?)<\/id>/g)].map(([, id]) => id);

  // RFC 4287, 4.1.1 and 4.1.2: what a feed and an entry must hold.
  it('holds id, title, updated and author, and each entry its own', () => {
    expect(idsOf(feed)).toHaveLength(2);
    // RFC 9562, 5.5: version 5, variant 10.
    for (const id of idsOf(feed)) {
      expect(id).toMatch(/^urn:uuid:[0-9a-f]{8}-[0-9a-f]{4}-5[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
    }
    expect(feed).toContain('<title>Notices &amp; news</title>');
    expect(updatedOf(feed)[0]).toMatch(/^2026-11-02T\d\d:\d\d:\d\dZ$/);
    expect(feed).toContain('<author><name>The club</name></author>');
    expect(feed).toContain('<title>Boards &lt;off&gt;</title>');
  });

  it('keeps its ids and dates when the guide moves to another address', () => {
    const moved = atomFeed({
      ...FEED,
      url: '/notices/feed.xml',
      homeUrl: '/notices/',
      entries: [{ ...entry!, url: '/notices/#boards' }],
    });
    expect(idsOf(moved)).toEqual(idsOf(feed));
    expect(updatedOf(moved)).toEqual(updatedOf(feed));
  });

  it('changes “updated” when the words of an entry change, and else never', () => {
    const later = atomFeed({ ...FEED, emptySince: '2027-01-01' });
    expect(updatedOf(later)).toEqual(updatedOf(feed));
    fc.assert(
      fc.property(fc.string(), fc.string(), (one, other) => {
        const at = (html: string) => updatedOf(atomFeed({ ...FEED, entries: [{ ...entry!, html }] })).at(-1);
        // One second in 86,400 is shared by chance: the seed is fixed, so that this is decided once.
        expect(at(one) === at(other)).toBe(one === other);
      }),
    );
  });

  it('carries HTML as escaped text', () => {
    expect(feed).toContain('&lt;p&gt;Mind the &quot;gap&quot; &amp; the edge&lt;/p&gt;');
  });

  it('leaves out control characters that XML cannot carry', () => {
    expect(escapeXml('a\u0000b\u0008c\u2028d🐟')).toBe('abc\u2028d🐟');
  });
});
