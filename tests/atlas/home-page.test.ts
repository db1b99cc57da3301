import { describe, expect, it } from 'vitest';
import { homePage } from '../../src/atlas/home-page.ts';
import { waterPage } from '../../src/atlas/water-page.ts';
import { examplePeg } from '../domain/example-venue.ts';
import { exampleAtlas } from './example-atlas.ts';

const CLOSED = examplePeg('2', { status: 'closed', statusReason: 'Below the line.', statusSince: '2026-02-02' });

describe('homePage', () => {
  it('lists every peg of every water and says which are closed', () => {
    const home = homePage(exampleAtlas({ venue: { pegs: [examplePeg('1'), CLOSED] } }));
    expect(home.waters[0]?.words).toBe('2 pegs, 1 closed, 0.74 ha');
    expect(home.waters[0]!.closures.map(({ pegs, standing }) => `${pegs}: ${standing.closed?.because}`)).toEqual([
      '2: since 2 Feb 2026: Below the line.',
    ]);
    expect(home.waters[0]!.pegs.map(({ standing, ...peg }) => ({ ...peg, closed: standing.closed !== null }))).toEqual([
      { peg: '1', href: '/pit/1/', closed: false },
      { peg: '2', href: '/pit/2/', closed: true },
    ]);
  });

  it('says what stands behind the guide, and that nothing is logged yet', () => {
    expect(homePage(exampleAtlas()).behind).toBe('1 peg on one water; no events are logged yet.');
  });

  it('folds the pegs of a large venue', () => {
    const many = Array.from({ length: 401 }, (_, index) => examplePeg(String(index + 1)));
    expect(homePage(exampleAtlas({ venue: { pegs: many } })).isFolded).toBe(true);
    expect(homePage(exampleAtlas()).isFolded).toBe(false);
  });
});

describe('waterPage', () => {
  it('says of a closed peg why, in its table', () => {
    const page = waterPage(exampleAtlas({ venue: { pegs: [examplePeg('1'), CLOSED] } }), 'pit');
    expect(page.pegs.map(({ standing }) => standing.closed?.because ?? null)).toEqual([
      null,
      'since 2 Feb 2026: Below the line.',
    ]);
    expect(page.facts[0]).toEqual({ name: 'Pegs', words: '2, 1 of them closed on 21 Nov 2026' });
  });

  it('says "not plumbed" and "no reading" where nobody measured', () => {
    const { facts, pegs } = waterPage(exampleAtlas(), 'pit');
    const words = new Map(facts.map((fact) => [fact.name, fact.words]));
    expect(words.get('Depth')).toBe('not plumbed');
    expect(words.get('Level')).toBe('no reading');
    expect(words.get('Area')).toBe('0.74 ha (1.83 acres)');
    expect(pegs[0]?.depth).toBe('not plumbed');
    expect(pegs[0]?.months.every(({ known }) => known === null)).toBe(true);
  });

  it('gives depths, volume and what was not used', () => {
    const depth = {
      meanMetres: 1.8,
      maximumMetres: 3.4,
      volumeCubicMetres: 22_000,
      soundings: 400,
      uncorrected: 0,
      plumbedShare: 0.884,
      unused: [{ why: 'outside' as const, soundings: 3 }],
      isobaths: [],
    };
    const water = { depth, level: { metres: -0.06, day: '2026-11-20' } };
    const words = new Map(waterPage(exampleAtlas({ water }), 'pit').facts.map((fact) => [fact.name, fact.words]));
    expect(words.get('Depth')).toBe('1.80 m on average, 3.40 m at most, from 400 soundings');
    expect(words.get('Volume')).toBe('22,000 m³ (4,840,000 gallons)');
    expect(words.get('Plumbed')).toBe('88% of the area lies near a sounding');
    expect(words.get('Not used')).toBe('3 soundings: outside the outline');
    expect(words.get('Level')).toBe('0.06 m below datum on 20 Nov 2026');
  });
});
