import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { loadRatings } from '../../src/atlas/ratings-cache.ts';
import type { Venue } from '../../src/domain/venue.ts';
import { examplePeg, exampleVenue } from '../domain/example-venue.ts';
import { exampleEvent, exampleSession } from '../ratings/example-log.ts';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'peg-atlas-cache-'));
});
afterEach(async () => {
  await rm(folder, { recursive: true });
});

const venue = exampleVenue({
  pegs: [examplePeg('1', { features: ['corner'] }), examplePeg('2')],
  events: [exampleEvent('a'), exampleEvent('b', { day: '2026-08-02' })],
  sessions: [
    exampleSession('a', '1', 'weighed', 4000, { angler: 'a-1' }),
    exampleSession('a', '2', 'weighed', 2000, { angler: 'a-2' }),
    exampleSession('b', '1', 'weighed', 5000, { angler: 'a-2' }),
    exampleSession('b', '2', 'dnw', undefined, { angler: 'a-1' }),
  ],
});

/** Loads, and tells whether the fit was done anew. */
async function load(of: Venue) {
  let fitted = false;
  const ratings = await loadRatings(of, {
    folder,
    progress: () => {
      fitted = true;
    },
  });
  return { ratings, fitted };
}

describe('loadRatings', () => {
  test('fits a log once, and gives the very same ratings from what it kept', async () => {
    const first = await load(venue);
    const second = await load(venue);
    expect([first.fitted, second.fitted]).toEqual([true, false]);
    expect(second.ratings).toEqual(first.ratings);
  });

  test.each([
    [
      'a stocking',
      { waters: venue.waters.map((water) => ({ ...water, stocked: [{ on: '2026-07-01', what: 'F1s' }] })) },
    ],
    ['a retired stand', { retired: [examplePeg('s-old', { retired: { from: '2026-07-01' } })] }],
    ['a dated feature', { pegs: venue.pegs.map((peg) => ({ ...peg, datedFeatures: [{ id: 'corner' }] })) }],
  ])('fits anew after %s', async (_, change) => {
    await load(venue);
    expect((await load({ ...venue, ...change })).fitted).toBe(true);
  });

  test('keeps the fit where only a notice, a photograph or a hazard changed', async () => {
    await load(venue);
    const notice = {
      id: 'n',
      title: 'n',
      kind: 'news',
      from: '2026-01-01',
      waters: [],
      pegs: [],
      markdown: '',
    } as const;
    expect((await load({ ...venue, notices: [notice] })).fitted).toBe(false);
    const photos = [{ file: 'swim.jpg', alt: 'A swim' }];
    const pictured = venue.pegs.map((peg) => ({ ...peg, photos }));
    expect((await load({ ...venue, pegs: pictured })).fitted).toBe(false);
  });

  test.each<[string, Partial<Venue>]>([
    ['a session', { sessions: venue.sessions.slice(1) }],
    ['an event', { events: venue.events.map((event) => ({ ...event, framePlaces: 1 })) }],
    ['a peg’s features', { pegs: venue.pegs.map((peg) => ({ ...peg, features: [] })) }],
    [
      'a rule',
      { settings: { ...venue.settings, ratingRules: { ...venue.settings.ratingRules, countChosenPegs: true } } },
    ],
  ])('fits anew where %s changed', async (_, changes) => {
    await load(venue);
    expect((await load({ ...venue, ...changes })).fitted).toBe(true);
  });

  test.each([
    ['empty', () => ''],
    ['cut short', (text: string) => text.slice(0, text.length / 2)],
    ['altered', (text: string) => text.replace('"sessions":4', '"sessions":5')],
  ])('does not trust a kept file that is %s', async (_, spoil) => {
    const { ratings } = await load(venue);
    const [name] = await readdir(folder);
    const file = join(folder, name!);
    const text = await readFile(file, 'utf8');
    expect(spoil(text)).not.toBe(text);
    await writeFile(file, spoil(text));
    const again = await load(venue);
    expect(again.fitted).toBe(true);
    expect(again.ratings).toEqual(ratings);
    expect((await load(venue)).fitted).toBe(false);
  });

  test('gives the ratings also where nothing can be kept', async () => {
    const blocked = join(folder, 'a-file');
    await writeFile(blocked, '');
    const ratings = await loadRatings(venue, { folder: blocked });
    expect(ratings.bags[0]?.bag).toBe('total');
  });

  test.each([
    ['cut short', (text: string) => text.slice(0, -9)],
    ['of other code', (text: string) => text.replace(/"code":"[0-9a-f]/, '"code":"x')],
  ])('works all out where what it kept of its work is %s', async (_, spoil) => {
    const { ratings } = await load(venue);
    for (const name of await readdir(folder)) {
      const file = join(folder, name);
      if (name.startsWith('work-')) await writeFile(file, spoil(await readFile(file, 'utf8')));
      else await rm(file);
    }
    expect((await load(venue)).ratings).toEqual(ratings);
  });

  test('a feature, a water or a part in other words refits nothing, and is told in the new words', async () => {
    const sessions = venue.sessions.filter(({ peg }) => peg === '1');
    const lone = { ...venue, sessions, pegs: venue.pegs.slice(0, 1) };
    await load(lone);
    const { settings, waters } = lone;
    const renamed = await load({
      ...lone,
      settings: {
        ...settings,
        features: settings.features.map((feature) => ({ ...feature, name: `${feature.name} anew`, meaning: 'Anew' })),
        bagParts: settings.bagParts.map((part) => ({ ...part, name: 'Otherwise' })),
      },
      waters: waters.map((water) => ({ ...water, name: 'Another Name' })),
    });
    expect(renamed.fitted).toBe(false);
    expect(renamed.ratings.notes).toContainEqual({ about: 'lone-peg', water: 'Another Name' });
  });

  test('leaves nothing half-written and keeps only the newest fits', async () => {
    for (let i = 0; i < 15; i++) {
      const sessions = [...venue.sessions, exampleSession('b', '1', 'weighed', 1000 + i, { angler: `a-${i + 3}` })];
      await load({ ...venue, sessions });
    }
    const names = await readdir(folder);
    expect(names.filter((name) => /^ratings-[0-9a-f]{12}-[0-9a-f]{32}\.json$/.test(name))).toHaveLength(12);
    expect(names.filter((name) => /^work-[0-9a-f]{12}\.json$/.test(name))).toHaveLength(1);
    expect(names).toHaveLength(13);
  });
});
