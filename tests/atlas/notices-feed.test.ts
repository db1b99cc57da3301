import { describe, expect, it } from 'vitest';
import { noticesFeed } from '../../src/atlas/notices-feed.ts';
import type { Notice } from '../../src/domain/notice.ts';
import { pegFacts } from '../../src/domain/peg-facts.ts';
import { pegVerdict } from '../../src/domain/peg-verdict.ts';
import { EXAMPLE_SETTINGS, examplePeg, exampleVenue } from '../domain/example-venue.ts';

const notice = (id: string, changes: Partial<Notice> = {}): Notice => ({
  id,
  title: id.slice(11),
  kind: 'closure',
  from: id.slice(0, 10),
  waters: [],
  pegs: [],
  markdown: 'Text',
  ...changes,
});
const feedOn = (guideDay: string, notices: readonly Notice[]) =>
  noticesFeed(exampleVenue({ notices, settings: { ...EXAMPLE_SETTINGS, guideDay } }), (path) => `/${path}`);
const entries = (feed: string) =>
  [...feed.matchAll(/<entry>(.*?)<\/entry>/gs)].map(([, entry]) => ({
    title: /<title>(.*?)<\/title>/.exec(entry!)![1],
    day: /<updated>(.*?)T/.exec(entry!)![1],
    updated: /<updated>(.*?)<\/updated>/.exec(entry!)![1],
  }));

describe('the feed of the notices', () => {
  it('does not change from one day of the guide to the next while no notice does', () => {
    const notices = [
      notice('2026-11-02-boards'),
      notice('2026-12-12-party', { kind: 'works', changedOn: '2026-11-18' }),
    ];
    expect(feedOn('2026-11-21', notices)).toBe(feedOn('2026-11-22', notices));
    expect(entries(feedOn('2026-11-21', notices)).map(({ day }) => day)).toEqual(['2026-11-18', '2026-11-02']);
  });

  it('says of an entry that it was replaced or cancelled, on that day', () => {
    const notices = [
      notice('2026-11-02-boards'),
      notice('2026-11-05-wasps', { cancelledOn: '2026-11-20' }),
      notice('2026-11-12-works', { replaces: '2026-11-02-boards' }),
    ];
    expect(entries(feedOn('2026-11-21', notices)).map(({ title, day }) => [title, day])).toEqual([
      ['Closure: works', '2026-11-12'],
      ['Cancelled. Closure: wasps', '2026-11-20'],
      ['Replaced. Closure: boards', '2026-11-12'],
    ]);
    expect(entries(feedOn('2026-11-19', notices))[1]).toMatchObject({ title: 'Closure: wasps', day: '2026-11-05' });
  });

  it('changes an entry that is reworded without a word about the day', () => {
    const [before] = entries(feedOn('2026-11-21', [notice('2026-11-02-boards')]));
    const [after] = entries(feedOn('2026-11-21', [notice('2026-11-02-boards', { markdown: 'Other text' })]));
    expect(after!.updated).not.toBe(before!.updated);
  });

  it('and the verdict agree: a closure that was cancelled closes no longer from that day on', () => {
    const closure = notice('2026-11-05-wasps', { until: '2026-12-05', cancelledOn: '2026-11-20' });
    const facts = pegFacts(examplePeg('1'), [closure], [], EXAMPLE_SETTINGS);
    expect(pegVerdict(facts, '2026-11-19').state).toBe('closed');
    expect(pegVerdict(facts, '2026-11-20').state).toBe('open');
  });
});
