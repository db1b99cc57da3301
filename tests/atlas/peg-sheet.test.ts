import { describe, expect, it } from 'vitest';
import { surveyOfPeg } from '../../src/atlas/atlas.ts';
import { neighboursOf, pegSheet, sideWords } from '../../src/atlas/peg-sheet.ts';
import { inEnglish } from '../../src/words/say.ts';
import { examplePeg } from '../domain/example-venue.ts';
import { exampleAtlas } from './example-atlas.ts';

const PLACE = {
  name: 'Brick Lane gate',
  place: {
    id: 'brick-lane',
    kind: 'gate' as const,
    name: 'Brick Lane gate',
    at: { lat: 0, lng: 0 },
    vehicles: true,
    locked: 'night' as const,
    openedBy: 'Bailiff',
  },
  distanceMetres: 140,
  bearingDegrees: 3,
  walkMetres: 182,
  at: { lat: 0, lng: 0 },
};

describe('pegSheet', () => {
  it('says of a closed peg since when and why', () => {
    const peg = examplePeg('1', { status: 'closed', statusReason: 'Below the line.', statusSince: '2026-02-02' });
    const sheet = pegSheet(exampleAtlas({ venue: { pegs: [peg] } }), 'pit/1');
    expect(sheet.standing.closed).toMatchObject({ headline: 'Closed since 2 Feb 2026', reason: 'Below the line.' });
    expect(sheet.description).toContain('Closed since 2 Feb 2026.');
    expect(pegSheet(exampleAtlas(), 'pit/1').standing.closed).toBeNull();
  });

  it('names neighbours with the gap as the angler sits, and says when one is closed', () => {
    const pegs = [examplePeg('1'), examplePeg('2', { status: 'closed', statusReason: 'Works.' })];
    const neighbours = [{ peg: 'pit/2', side: 'right', gapMetres: 13.6 }] as const;
    const atlas = exampleAtlas({ venue: { pegs }, peg: { neighbours } });
    expect(neighboursOf(atlas, surveyOfPeg(atlas, 'pit/1'))).toMatchObject([
      { peg: '2', href: '/pit/2/', gap: '14 m', side: 'right', standing: { closed: { because: 'Works.' } } },
    ]);
    expect(pegSheet(atlas, 'pit/1').closedBeside).toMatchObject([
      { peg: '2', standing: { closed: { because: 'Works.' } } },
    ]);
    const open = exampleAtlas({ venue: { pegs: [examplePeg('1'), examplePeg('2')] }, peg: { neighbours } });
    expect(pegSheet(open, 'pit/1').closedBeside).toEqual([]);
  });

  it('names a neighbour once where it is the next peg both ways round', () => {
    const pegs = [examplePeg('1'), examplePeg('2')];
    const neighbours = [
      { peg: 'pit/2', side: 'left', gapMetres: 298 },
      { peg: 'pit/2', side: 'right', gapMetres: 20 },
    ] as const;
    const atlas = exampleAtlas({ venue: { pegs }, peg: { neighbours } });
    expect(neighboursOf(atlas, surveyOfPeg(atlas, 'pit/1')).map(({ gap, side }) => [gap, side])).toEqual([
      ['20 m', 'right'],
    ]);
  });

  it('gives a caller what to read out, and "not known" where help is not mapped', () => {
    const { emergency } = pegSheet(
      exampleAtlas({ peg: { gates: { best: PLACE, atNight: null, lockedNearer: null } } }),
      'pit/1',
    );
    expect(emergency.where).toBe('Example Fishery: The Pit, peg 1');
    expect(emergency.gridReference).toBe('TF 3127 1880');
    expect(emergency.position).toBe('52.75000 N, 0.05000 W');
    expect(emergency.gates).toEqual([
      {
        what: 'Gate for an ambulance',
        words: 'Brick Lane gate, 140 m north (walk 182 m), locked at night',
        opener: { role: 'Bailiff', phone: null },
      },
    ]);
    expect([...emergency.kit, emergency.throwLine].map(({ words, check }) => [words, check])).toEqual([
      ['not known', null],
      ['not known', null],
    ]);
    expect(pegSheet(exampleAtlas(), 'pit/1').emergency.gates[0]?.words).toBe('not known');
  });

  it('says the nearest town, who opens a locked gate with the number, and that kit is overdue a check', () => {
    const settings = {
      ...exampleAtlas().venue.settings,
      contacts: [{ role: 'bailiff', phone: '01632 960184' }],
      emergency: { number: '999', nearestTown: 'Gedmarsh' },
    };
    const line = { ...PLACE, place: { ...PLACE.place, kind: 'throw-line' as const, checkedOn: '2026-09-01' } };
    const peg = { gates: { best: PLACE, atNight: null, lockedNearer: PLACE }, nearestThrowLine: line };
    const { emergency } = pegSheet(exampleAtlas({ venue: { settings }, peg }), 'pit/1');
    expect(emergency.where).toBe('Example Fishery, near Gedmarsh: The Pit, peg 1');
    expect(emergency.gates.map(({ what, opener }) => [what, opener?.phone])).toEqual([
      ['Gate for an ambulance', '01632 960184'],
      ['Nearer, but not open', '01632 960184'],
    ]);
    expect(emergency.throwLine.check?.dueOn).toBe('2026-09-29');
  });

  it('tells the first steps on the sheet itself, with the venue’s numbers', () => {
    const { steps } = pegSheet(exampleAtlas(), 'pit/1').emergency;
    expect(steps.map(({ heading }) => heading)).toEqual([
      'Someone is in the water',
      'Not waking, not breathing',
      'A person or tackle has touched a power line',
    ]);
    expect(steps[2]?.words).toContain('Call 105, and 999');
  });

  it('has no worth and no bag plan where the log says nothing', () => {
    const sheet = pegSheet(exampleAtlas(), 'pit/1');
    expect(sheet.worths).toBeNull();
    expect(sheet.bag).toBeNull();
  });

  it('tells what lies within reach and on which side', () => {
    const reach = [{ what: 'island', distanceMetres: 17.2, bearingDegrees: 340 }];
    expect(pegSheet(exampleAtlas({ peg: { reach } }), 'pit/1').reach).toEqual([
      { name: 'Island', words: '17 m, 20° to the left' },
    ]);
  });
});

it.each([
  [48, 48, 'straight ahead'],
  [2, 358, 'straight ahead'],
  [10, 350, '20° to the right'],
  [350, 10, '20° to the left'],
])('a bearing of %d° from a peg that faces %d° is %s', (bearing, facing, words) => {
  expect(sideWords(bearing, facing, inEnglish)).toBe(words);
});
