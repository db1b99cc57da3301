import { describe, expect, it } from 'vitest';
import { type BankPiece, bankPiece } from '../../../src/atlas/drawing/bank-piece.ts';
import { compareDrawing, expectWellFormed } from './compare-drawing.ts';
import { exampleStripPeg } from './example-strip.ts';

function piece(own: Partial<BankPiece> = {}): BankPiece {
  const pegs = ['20', '21', '22', '23', '24', '25', '26'].map((peg) => exampleStripPeg(peg));
  return { pegs, here: 3, deepestMetres: 2, gapWords: (metres) => `${metres} m`, ...own };
}

describe('bankPiece', () => {
  it('draws what is committed', () => {
    const svg = bankPiece(
      piece({
        pegs: [
          exampleStripPeg('20', { depthsMetres: [0.5, null, null, null] }),
          exampleStripPeg('21', { closed: true, worths: null }),
          exampleStripPeg('22', { gapMetres: 14 }),
          exampleStripPeg('23', { gapMetres: 62, depthsMetres: [0.8, 1.4, 0.2, 0] }),
          exampleStripPeg('24', { closed: false, dated: '{"status":"open"}' }),
          exampleStripPeg('25', { depthsMetres: [null, null, null, null] }),
          exampleStripPeg('26', { gapMetres: null }),
        ],
      }),
    );
    expectWellFormed(svg);
    compareDrawing('bank-piece', svg);
  });

  it('links two neighbours to either side, not its own peg, and shows no worth of any', () => {
    const svg = bankPiece(piece());
    expect([...svg.matchAll(/class="number"[^>]*>(\d+)</g)].map(([, peg]) => peg)).toEqual(['21', '22', '24', '25']);
    expect(svg).not.toContain('<circle');
    expect(svg.match(/>15 m</g)).toHaveLength(2);
  });

  it('says in words too that a neighbour is closed, in place of the way to it', () => {
    const pegs = [exampleStripPeg('1'), exampleStripPeg('2', { closed: true, gapMetres: null })];
    const svg = bankPiece(piece({ pegs, here: 0 }));
    expect(svg).toContain('<a class="b-peg b-closed" href="/pit/2/"');
    expect(svg).toMatch(/>2<\/text> <text y="13">closed<\/text><\/a>/);
    expect(svg).not.toContain('15 m');
  });

  it('has both words of a peg that closes or opens on a later day, of which one is shown', () => {
    const pegs = [exampleStripPeg('1'), exampleStripPeg('2', { dated: '{"status":"open"}', gapMetres: null })];
    const svg = bankPiece(piece({ pegs, here: 0 }));
    expect(svg).toMatch(/data-when="closed" display="none"[^>]*>closed<\/text><text data-when="open"[^>]*>15 m</);
  });

  it('fills the own notch of a closed peg', () => {
    expect(bankPiece(piece({ pegs: [exampleStripPeg('1', { closed: true })], here: 0 }))).toContain(
      '"b-here b-closed"',
    );
  });

  it('says that nobody has plumbed before its peg', () => {
    const pegs = [exampleStripPeg('1', { depthsMetres: [null, null, null, null], gapMetres: null })];
    expect(bankPiece(piece({ pegs, here: 0 }))).toContain('>not plumbed<');
    expect(bankPiece(piece())).not.toContain('not plumbed');
  });

  it.each(['1', '23', '128', 'Willow'])('keeps peg %s and its neighbours within the drawing and apart', (name) => {
    const svg = bankPiece(piece({ pegs: piece().pegs.map((peg, i) => (i === 3 ? { ...peg, peg: name } : peg)) }));
    const drawn = /translate\((\d+)\)">(?:<path class="hit"[^>]*>)?<path class="notch" d="M(\S+?),48V\S+?h(\S+?)V/g;
    const notches = [...svg.matchAll(drawn)]
      .map(([, at, left, wide]) => [Number(at) + Number(left), Number(at) + Number(left) + Number(wide)] as const)
      .sort(([a], [b]) => a - b);
    expect(notches).toHaveLength(5);
    expect(notches[0]![0]).toBeGreaterThanOrEqual(0);
    expect(notches[4]![1]).toBeLessThanOrEqual(360);
    for (let i = 1; i < 5; i++) expect(notches[i]![0]).toBeGreaterThan(notches[i - 1]![1]);
  });

  it('keeps names from becoming markup', () => {
    const pegs = [exampleStripPeg('<b>'), exampleStripPeg('"<i>', { gapMetres: null })];
    expect(bankPiece(piece({ pegs, here: 0 }))).not.toMatch(/<b>|<i>|""/);
  });
});
