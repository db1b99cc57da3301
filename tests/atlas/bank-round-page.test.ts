import { describe, expect, it } from 'vitest';
import { bankRoundPage, roundsPage } from '../../src/atlas/bank-round-page.ts';
import { recordBase } from '../../src/content/round-file/record-version.ts';
import type { Hazard } from '../../src/domain/hazard.ts';
import { examplePeg } from '../domain/example-venue.ts';
import { exampleAtlas } from './example-atlas.ts';

const HAZARD: Hazard = { kind: 'trip', place: 'the </script> step', severity: 2, likelihood: 3, foundOn: '2026-03-01' };

const pegs = [
  examplePeg('1', { at: { lat: 52.75, lng: -0.0508 }, hazards: [HAZARD, { ...HAZARD, clearedOn: '2026-04-01' }] }),
  examplePeg('2', { at: { lat: 52.75, lng: -0.0502 }, status: 'closed', statusReason: 'works', where: 'South bank' }),
  examplePeg('3', { at: { lat: 52.75, lng: -0.0505 } }),
];

const bases = new Map([['pit/1', recordBase('---\nstatus: open\nclearance: { clear-width: 4 m }\n---\n')]]);

describe('the bank round page of a water', () => {
  const page = bankRoundPage(exampleAtlas({ venue: { pegs } }), 'pit', bases);

  it('lists the pegs in walking order with the way from one to the next', () => {
    expect(page.stops).toMatchObject([
      { peg: '1', href: '/pit/1/', where: '', standing: { closed: null }, facts: '0 m on · 1 hazard known' },
      { peg: '3', href: '/pit/3/', where: '', standing: { closed: null }, facts: '20 m on' },
      { peg: '2', href: '/pit/2/', where: 'South bank', standing: { closed: { because: 'works' } }, facts: '20 m on' },
    ]);
    expect(page.wayWords).toBe(
      '3 pegs. No car park is drawn: the way begins at the first peg, 41 m on foot, the shortest there is.',
    );
  });

  it('gives the script what the record says, its version and the hazards in force', () => {
    const [first, second] = page.data.pegs;
    expect(first?.known).toEqual({ status: 'open', 'clearance.clear-width': '4 m' });
    expect(first?.record).toMatch(/^[0-9a-f]{12}$/);
    expect(first?.hazards).toEqual([
      {
        kind: 'trip',
        name: 'Trip hazard',
        place: 'the </script> step',
        foundOn: '2026-03-01',
        severity: 2,
        likelihood: 3,
        lookedAt: 'found 1 Mar 2026',
      },
    ]);
    expect(second).toMatchObject({ record: '', known: {} });
  });

  it('writes that as JSON which cannot end the script element it stands in', () => {
    expect(page.json).not.toContain('<');
    expect(JSON.parse(page.json)).toEqual(page.data);
  });
});

it('begins with the waters, the length of each round and the sheet to fill by hand', () => {
  expect(roundsPage(exampleAtlas({ venue: { pegs } }))).toMatchObject({
    lengthUnit: 'm',
    nestingMonths: 'March to August',
    waters: [{ name: 'The Pit', words: '3 pegs, 41 m', href: '/bank-round/pit/', sheetHref: '/due/round-sheet/pit/' }],
  });
});

it('tells a venue by its name and club', () => {
  const { venue } = roundsPage(exampleAtlas());
  expect(venue.name).toBe('Example Fishery');
  expect(venue.id).toMatch(/^[0-9a-f]{12}$/);
});
