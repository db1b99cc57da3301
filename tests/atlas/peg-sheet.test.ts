import { describe, expect, it } from 'vitest';
import { pegSheet, sideWords } from '../../src/atlas/peg-sheet.ts';
import { examplePeg } from '../domain/example-venue.ts';
import { exampleAtlas } from './example-atlas.ts';

const PLACE = {
  name: 'Brick Lane gate',
  distanceMetres: 140,
  bearingDegrees: 3,
  walkMetres: 182,
  at: { lat: 0, lng: 0 },
};

describe('pegSheet', () => {
  it('says of a closed peg since when and why', () => {
    const peg = examplePeg('1', { status: 'closed', statusReason: 'Below the line.', statusSince: '2026-02-02' });
    const sheet = pegSheet(exampleAtlas({ venue: { pegs: [peg] } }), 'pit/1');
    expect(sheet.closed).toEqual({ since: 'Closed since 2 Feb 2026', reason: 'Below the line.' });
    expect(sheet.description).toContain('Closed.');
    expect(pegSheet(exampleAtlas(), 'pit/1').closed).toBeNull();
  });

  it('names neighbours with the gap as the angler sits, and says when one is closed', () => {
    const pegs = [examplePeg('1'), examplePeg('2', { status: 'closed', statusReason: 'Works.' })];
    const neighbours = [{ peg: 'pit/2', side: 'right', gapMetres: 13.6 }] as const;
    const sheet = pegSheet(exampleAtlas({ venue: { pegs }, peg: { neighbours } }), 'pit/1');
    expect(sheet.neighbours).toEqual([{ peg: '2', href: '/pit/2/', gap: '14 m', side: 'right', closed: 'Works.' }]);
  });

  it('names a neighbour once where it is the next peg both ways round', () => {
    const pegs = [examplePeg('1'), examplePeg('2')];
    const neighbours = [
      { peg: 'pit/2', side: 'left', gapMetres: 298 },
      { peg: 'pit/2', side: 'right', gapMetres: 20 },
    ] as const;
    const sheet = pegSheet(exampleAtlas({ venue: { pegs }, peg: { neighbours } }), 'pit/1');
    expect(sheet.neighbours.map(({ gap, side }) => [gap, side])).toEqual([['20 m', 'right']]);
  });

  it('gives a caller what to read out, and "not known" where help is not mapped', () => {
    const { emergency } = pegSheet(exampleAtlas({ peg: { nearestGate: PLACE } }), 'pit/1');
    expect(emergency.where).toBe('The Pit, peg 1');
    expect(emergency.gridReference).toBe('TF 3127 1880');
    expect(emergency.position).toBe('52.75000, −0.05000');
    expect(emergency.help.map(({ words }) => words)).toEqual([
      'Brick Lane gate, 140 m north (walk 182 m)',
      'not known',
      'not known',
    ]);
  });

  it('has no return and no bag plan where the log says nothing', () => {
    const sheet = pegSheet(exampleAtlas(), 'pit/1');
    expect(sheet.returns).toBeNull();
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
  expect(sideWords(bearing, facing)).toBe(words);
});
