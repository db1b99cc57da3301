import { expect, it } from 'vitest';
import { sessionCounts } from '../../src/atlas/peg-sessions.ts';
import type { FishingEvent, Session } from '../../src/domain/session.ts';
import { exampleAtlas } from './example-atlas.ts';

const event = (id: string, day: string): FishingEvent => ({
  id,
  day,
  water: 'pit',
  kind: 'match',
  hours: 5,
  listing: 'full',
  framePlaces: 3,
  conditions: {},
});
const session = (of: string, status: Session['status']): Session => ({
  event: of,
  water: 'pit',
  peg: '1',
  status,
  parts: {},
  ...(status === 'weighed' ? { weightGrams: 5000, angler: 'a-7f3k9q' } : {}),
});

const atlas = exampleAtlas({
  venue: {
    events: [event('a', '2025-06-07'), event('b', '2026-06-06'), event('c', '2026-11-14')],
    sessions: [session('a', 'weighed'), session('b', 'dnw'), session('c', 'weighed'), session('c', 'absent')],
  },
});

it('counts sessions by year and month, the latest year first', () => {
  const { total, years, byMonth } = sessionCounts(atlas, 'pit/1');
  expect(total).toBe(4);
  expect(years.map(({ year, total: all }) => [year, all])).toEqual([
    [2026, 3],
    [2025, 1],
  ]);
  expect(years[0]?.months).toEqual([0, 0, 0, 0, 0, 1, 0, 0, 0, 0, 2, 0]);
  expect(byMonth[6]).toBe(2);
});

it('says how they ended in words, and only what occurred', () => {
  expect(sessionCounts(atlas, 'pit/1').byStatus).toEqual(['2 weighed', '1 did not weigh (DNW)', '1 absent']);
});

it('holds neither a weight nor an angler', () => {
  expect(JSON.stringify(sessionCounts(atlas, 'pit/1'))).not.toMatch(/5000|a-7f3k9q/);
});

it('is empty for a peg nobody has drawn', () => {
  expect(sessionCounts(atlas, 'pit/9')).toMatchObject({ total: 0, years: [], byStatus: [] });
});
