import { describe, expect, it } from 'vitest';
import { goneData } from '../../src/atlas/gone-data.ts';
import { homePage } from '../../src/atlas/home-page.ts';
import { nowFacts } from '../../src/atlas/now-facts.ts';
import { pegData } from '../../src/atlas/peg-data.ts';
import { changeLines, gonePages, numberLines } from '../../src/atlas/stand-history.ts';
import { venueChanges } from '../../src/atlas/venue-changes.ts';
import { waterPage } from '../../src/atlas/water-page.ts';
import { pegVerdict } from '../../src/domain/peg-verdict.ts';
import { standId } from '../../src/domain/stand.ts';
import { examplePeg } from '../domain/example-venue.ts';
import { exampleAtlas } from './example-atlas.ts';

/** Peg 4 was retired, 5 and 6 became 4 and 5, so that nobody carries 6; 7 was taken out and came to nothing. */
const LAST = '2025-02-28';
const MOVED_UP = examplePeg('4', { id: 's-a', was: [{ peg: '5', until: LAST }] });
const LAST_OF_RUN = examplePeg('5', { id: 's-b', was: [{ peg: '6', until: LAST }] });
const SLIPPED = examplePeg('s-c', {
  id: 's-c',
  was: [{ peg: '4', until: LAST }],
  retired: { from: '2025-03-01', why: 'The bank slipped' },
});
const FILLED = examplePeg('s-d', {
  id: 's-d',
  was: [{ peg: '7', until: '2026-01-31' }],
  retired: { from: '2026-02-01' },
});
const ATLAS = exampleAtlas({ venue: { pegs: [MOVED_UP, LAST_OF_RUN], retired: [SLIPPED, FILLED] } });

const said = (lines: ReturnType<typeof numberLines>) =>
  lines.map(({ words, link }) => (link === null ? words : `${words} [${link.words}](${link.href})`));

describe('a sheet', () => {
  it('says which number its post carried, and whose its own number was', () => {
    expect(said(numberLines(ATLAS, MOVED_UP))).toEqual([
      'This post was 5 until 28 Feb 2025; what was logged on it then counts here.',
      'Until 28 Feb 2025, 4 was another post, not fished since 1 Mar 2025: the bank slipped.',
    ]);
    expect(said(numberLines(ATLAS, LAST_OF_RUN))).toEqual([
      'This post was 6 until 28 Feb 2025; what was logged on it then counts here.',
      'Until 28 Feb 2025, 5 was another post: [peg 4 today](/pit/4/)',
    ]);
    expect(numberLines(exampleAtlas(), examplePeg('1'))).toEqual([]);
  });

  it('says since when it is fished, where it stood, and which features it had', () => {
    const peg = examplePeg('1', {
      since: '2024-03-01',
      moved: [
        { on: '2025-03-01', metres: 8, newGround: true },
        { on: '2026-03-01', metres: 2, newGround: false },
      ],
      features: ['corner'],
      datedFeatures: [
        { id: 'corner' },
        { id: 'reeds', from: '2024-05-01' },
        { id: 'reeds', until: '2024-04-01' },
        { id: 'reeds', from: '2025-05-01', until: '2025-06-01' },
      ],
    });
    expect(said(changeLines(exampleAtlas(), peg))).toEqual([
      'First fished on 1 Mar 2024.',
      'Its platform was set 8 m away on 1 Mar 2025, before other water: earlier bags are rated as those of another place.',
      'Its platform was set 2 m away on 1 Mar 2026; bags from before still count.',
      'reeds since 1 May 2024.',
      'reeds until 1 Apr 2024.',
      'reeds from 1 May 2025 until 1 Jun 2025.',
    ]);
  });
});

describe('a number that is on no post any more', () => {
  it('keeps its address, which says where the stand went', () => {
    expect(gonePages(ATLAS).map(({ number, words, now }) => [number, words, ...said([now])])).toEqual([
      ['6', 'No post of The Pit has carried 6 since 1 Mar 2025.', 'The post that carried it is [peg 5 today](/pit/5/)'],
      [
        '7',
        'No post of The Pit has carried 7 since 1 Feb 2026.',
        'The place has not been fished since 1 Feb 2026. It is not in the draw and not to be fished.',
      ],
    ]);
  });

  it('is found by whoever types it, and stands in no grid of pegs', () => {
    const [water] = homePage(ATLAS).waters;
    expect(water?.gone).toEqual([
      { number: '6', href: '/pit/6/' },
      { number: '7', href: '/pit/7/' },
    ]);
    expect(water?.pegs.map(({ peg }) => peg)).toEqual(['4', '5']);
  });

  it('is closed for an older copy on a phone, on every day', () => {
    const { pegs } = nowFacts(ATLAS);
    expect(Object.keys(pegs)).toEqual(['pit/6', 'pit/7']);
    for (const day of ['2020-01-01', '2026-11-21', '2030-01-01']) {
      expect(Object.values(pegs).map((facts) => pegVerdict(facts, day).state)).toEqual(['closed', 'closed']);
    }
    expect(pegs['pit/6']?.reason).toBe('No post carries this number any more: it is peg 5 today.');
  });

  it('is told in the data, and every peg with its stand and the numbers it had', () => {
    expect(goneData(ATLAS)).toEqual([
      { water: 'pit', peg: '6', since: '2025-03-01', stand: 's-b', now: '5', retired: null },
      {
        water: 'pit',
        peg: '7',
        since: '2026-02-01',
        stand: 's-d',
        now: null,
        retired: { from: '2026-02-01', why: null },
      },
    ]);
    expect(pegData(ATLAS).map(({ peg, stand, was }) => [peg, stand, was])).toEqual([
      ['4', 's-a', [{ peg: '5', until: LAST }]],
      ['5', 's-b', [{ peg: '6', until: LAST }]],
    ]);
    expect(pegData(exampleAtlas())[0]?.stand).toBe(standId(examplePeg('1')));
  });
});

it('a water’s page tells of fish put in and taken out, of its level and of new numbers, each with its day', () => {
  const base = ATLAS.venue.waters[0]!;
  const atlas = exampleAtlas({
    venue: {
      ...ATLAS.venue,
      waters: [
        {
          ...base,
          stocked: [{ on: '2026-03-01', what: 'F1s', kilograms: 100 }],
          netted: [{ on: '2026-04-01', what: 'bream' }],
          levelChanges: [{ on: '2026-05-01', metres: -0.2, why: 'The sill was cut' }],
        },
      ],
    },
  });
  const facts = waterPage(atlas, 'pit').facts.map(({ name, words }) => `${name}: ${words}`);
  expect(facts.slice(-4)).toEqual([
    'Stocked: 1 Mar 2026: F1s, 220 lb 7 oz',
    'Netted: 1 Apr 2026: bream',
    'Level zero: 1 May 2026: 0.20 m lower than before, The sill was cut',
    'Numbered anew: after 28 Feb 2025: 5 became 4, 6 became 5',
  ]);
  expect(venueChanges(atlas)).toEqual([
    '2 posts carried another number before. 0 sessions logged under a number of their day are put to the stand that carried it.',
    '2 stands are not fished any more. What was logged there, 0 sessions, still tells of features and anglers.',
    'The Pit was stocked on 1 Mar 2026 (F1s): its days may be better from then on.',
    'The Pit was netted on 1 Apr 2026 (bream): its days may be poorer from then on.',
  ]);
  expect(venueChanges(exampleAtlas())).toEqual([]);
});
