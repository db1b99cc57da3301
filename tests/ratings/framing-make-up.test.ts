import { describe, expect, test } from 'vitest';
import { framingMakeUp } from '../../src/ratings/framing-make-up.ts';
import { EXAMPLE_SETTINGS, exampleVenue } from '../domain/example-venue.ts';
import { exampleEvent, exampleSession } from './example-log.ts';

const bag = (peg: string, grams: number, silvers?: number, carp?: number) =>
  exampleSession('a', peg, 'weighed', grams, {
    parts: {
      ...(silvers === undefined ? {} : { silvers: { weightGrams: silvers } }),
      ...(carp === undefined ? {} : { carp: { weightGrams: carp } }),
    },
  });

describe('framingMakeUp', () => {
  test('averages the shares of framing bags, every bag counting the same', () => {
    const venue = exampleVenue({
      events: [exampleEvent('a')],
      sessions: [bag('1', 10_000, 2000, 8000), bag('2', 4000, 4000, 0), bag('3', 1000, 1000, 0)],
    });
    expect(framingMakeUp(venue)).toEqual([
      {
        water: 'pit',
        month: 6,
        bags: 2,
        shares: [
          { part: 'silvers', share: 0.6 },
          { part: 'carp', share: 0.4 },
        ],
      },
    ]);
  });

  test('counts an empty part as none where the other parts make up the bag', () => {
    const venue = exampleVenue({ events: [exampleEvent('a')], sessions: [bag('1', 3000, 3000)] });
    expect(framingMakeUp(venue)[0]?.shares).toEqual([
      { part: 'silvers', share: 1 },
      { part: 'carp', share: 0 },
    ]);
  });

  test('counts the framing bags of a match over several waters at the water they came from', () => {
    const { waters } = exampleVenue();
    const venue = exampleVenue({
      waters: [...waters, { ...waters[0]!, id: 'lake' }],
      events: [exampleEvent('a', { match: 'open' }), exampleEvent('b', { match: 'open', water: 'lake' })],
      sessions: [
        bag('1', 9000, 9000, 0),
        bag('2', 1000, 1000, 0),
        { ...bag('1', 8000, 0, 8000), event: 'b', water: 'lake' },
      ],
    });
    expect(framingMakeUp(venue).map(({ water, bags, shares }) => [water, bags, shares[0]!.share])).toEqual([
      ['pit', 1, 1],
      ['lake', 1, 0],
    ]);
  });

  test('leaves out bags from before a part was weighed apart', () => {
    const made = (since: string) =>
      framingMakeUp(
        exampleVenue({
          settings: {
            ...EXAMPLE_SETTINGS,
            bagParts: EXAMPLE_SETTINGS.bagParts.map((part) => (part.id === 'carp' ? { ...part, since } : part)),
          },
          events: [exampleEvent('a')],
          sessions: [bag('1', 3000, 3000)],
        }),
      );
    expect(made('2026-06-15')).toEqual([]);
    expect(made('2026-06-14')).toHaveLength(1);
  });

  test('leaves out bags of which a part is not known', () => {
    const venue = exampleVenue({ events: [exampleEvent('a')], sessions: [bag('1', 3000, 1000), bag('2', 2000)] });
    expect(framingMakeUp(venue)).toEqual([]);
  });
});
