import { describe, expect, it } from 'vitest';
import { type BankStrip, bankTiles } from '../../../src/atlas/drawing/bank-tiles.ts';
import { isFolded, placeAlong, type StripPeg } from '../../../src/atlas/drawing/strip-peg.ts';
import { compareDrawing, expectWellFormed } from './compare-drawing.ts';
import { exampleStripPeg } from './example-strip.ts';

function strip(pegs: readonly StripPeg[]): BankStrip {
  return {
    pegs: pegs.map((peg, i) => (i === pegs.length - 1 ? { ...peg, gapMetres: null } : peg)),
    nowMonth: 11,
    deepestMetres: 2,
    depthMarks: [{ depthMetres: 1, words: '1 m' }],
    gapWords: (metres) => `${metres} m`,
  };
}

const VARIED = strip([
  exampleStripPeg('1', {
    hazards: [{ hardRule: false }, { hardRule: true }],
    features: [{ id: 'reeds', name: 'Reeds' }],
  }),
  exampleStripPeg('2', { depthsMetres: [0.5, null, null, null], figure: '', gapMetres: 62 }),
  exampleStripPeg('3', { depthsMetres: [null, null, null, null], figure: '', closed: true, worths: null }),
  exampleStripPeg('4', {
    depthsMetres: [0.8, 1.4, 0.2, 0],
    figure: '0.20',
    features: [{ id: 'own', name: 'Old Sluice' }],
  }),
]);

describe('bankTiles', () => {
  it('draws what is committed', () => {
    const [svg] = bankTiles(VARIED, 7);
    expectWellFormed(svg!);
    compareDrawing('bank-strip', svg!);
  });

  it('draws a water of one peg', () => {
    const tiles = bankTiles(strip([exampleStripPeg('1')]), 7);
    expect(tiles).toHaveLength(1);
    expectWellFormed(tiles[0]!);
  });

  it('cuts the strip into drawings that join: each begins where the one before ends', () => {
    const tiles = bankTiles(strip(Array.from({ length: 17 }, (_, i) => exampleStripPeg(String(i + 1)))), 7);
    expect(tiles.map((svg) => svg.match(/class="b-peg/g)?.length)).toEqual([7, 7, 3]);
    let end = 0;
    for (const svg of tiles) {
      const [, from, width] = /viewBox="(\S+) 0 (\S+) /.exec(svg)!.map(Number);
      expect(from).toBe(end);
      end = from! + width!;
    }
  });

  it('leaves no last peg alone in a drawing of its own', () => {
    const tiles = bankTiles(strip(Array.from({ length: 8 }, (_, i) => exampleStripPeg(String(i + 1)))), 7);
    expect(tiles.map((svg) => svg.match(/class="b-peg/g)?.length)).toEqual([8]);
  });

  it('shows no worth of a peg that is closed on every day, and that of one which reopens on its open days alone', () => {
    const closed = exampleStripPeg('1', { closed: true, worths: null });
    expect(bankTiles(strip([closed]), 7)[0]).not.toContain('<circle');
    const [reopens] = bankTiles(strip([exampleStripPeg('1', { closed: true, dated: '{"status":"open"}' })]), 7);
    expect(reopens).toMatch(/<g data-verdict="[^"]*" data-when="open" display="none"><g class="of-month/);
  });

  it('has every month, of which the page shows the one chosen, and marks the present one', () => {
    const [svg] = bankTiles(strip([exampleStripPeg('1')]), 7);
    expect(svg!.match(/data-month="\d+"/g)).toHaveLength(12);
    expect(svg!.match(/class="of-month now" data-month="11"/g)).toHaveLength(1);
  });

  it('ends a whisker that leaves the axis in an arrow head', () => {
    const beyond = exampleStripPeg('1', { worths: [{ value: 2, low: 1, high: 4, evidence: 'thin' }] });
    expect(bankTiles(strip([beyond]), 7)[0]).toMatch(/class="whisker" d="[^"]*l3,-3l3,3"/);
  });

  it('joins no bed where nobody has plumbed, nor across bank that is drawn shortened', () => {
    const [svg] = bankTiles(VARIED, 7);
    const nearest = /class="bed bed-0" d="([^"]*)"/.exec(svg!)![1]!;
    expect(nearest.match(/M/g)).toHaveLength(2);
    expect(svg).toContain('>62 m<');
    expect(svg!.match(/>not plumbed</g)).toHaveLength(1);
    expect(svg!.match(/class="figure">–</g)).toHaveLength(2);
  });

  it('writes how many hazards there are where their ticks find no room', () => {
    const many = exampleStripPeg('1', { hazards: Array.from({ length: 6 }, () => ({ hardRule: false })) });
    expect(bankTiles(strip([many]), 7)[0]).toContain('>6 hazards<');
  });

  it('keeps names from becoming markup', () => {
    const evil = exampleStripPeg('<b>', { label: '"><b>', features: [{ id: 'x', name: '<i>' }] });
    const [svg] = bankTiles(strip([evil]), 7);
    expect(svg).not.toMatch(/<b>|<i>/);
  });
});

describe('placeAlong', () => {
  it('keeps the order and room for a finger, whatever the gaps', () => {
    const pegs = [0, 3, 1000, 20].map((gapMetres, i) => exampleStripPeg(String(i), { gapMetres }));
    const { xs, width } = placeAlong(pegs);
    for (let i = 1; i < xs.length; i++) expect(xs[i]! - xs[i - 1]!).toBeGreaterThanOrEqual(40);
    expect(width).toBeGreaterThan(xs.at(-1)!);
    expect([isFolded(38), isFolded(1000)]).toEqual([false, true]);
  });
});
