import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type OrderedPeg, orderedPegs, type PegOrder } from '../../src/domain/peg-order.ts';

const anyPeg: fc.Arbitrary<OrderedPeg> = fc.record({
  peg: fc.nat({ max: 60 }).map(String),
  isClosed: fc.boolean(),
  depthMetres: fc.option(fc.double({ min: 0, max: 6, noNaN: true })),
  walkMetres: fc.option(fc.double({ min: 0, max: 900, noNaN: true })),
  stepFree: fc.option(fc.boolean()),
  worths: fc.record({ total: fc.option(fc.double({ min: 0.1, max: 5, noNaN: true })), carp: fc.constant(null) }),
});
const anyOrder = fc.constantFrom<PegOrder>('depth', 'walk', 'step-free', 'worth-total', 'worth-carp', 'worth-eels');

const peg = (name: string, of: Partial<OrderedPeg> = {}): OrderedPeg => ({
  peg: name,
  isClosed: false,
  depthMetres: null,
  walkMetres: null,
  stepFree: null,
  worths: {},
  ...of,
});
const names = (pegs: readonly OrderedPeg[]) => pegs.map((each) => each.peg).join(' ');

describe('the order of pegs', () => {
  it('loses and makes no peg, and recommends no closed one, whatever is asked for', () => {
    fc.assert(
      fc.property(fc.array(anyPeg), anyOrder, (pegs, order) => {
        const ordered = orderedPegs(pegs, order);
        expect(new Set(ordered)).toEqual(new Set(pegs));
        expect(ordered).toHaveLength(pegs.length);
        const firstClosed = ordered.findIndex(({ isClosed }) => isClosed);
        if (firstClosed >= 0) expect(ordered.slice(firstClosed).every(({ isClosed }) => isClosed)).toBe(true);
      }),
    );
  });

  it('by number is that of the posts, a closed one in its place', () => {
    expect(names(orderedPegs([peg('14a'), peg('2', { isClosed: true }), peg('14'), peg('10')], 'number'))).toBe(
      '2 10 14 14a',
    );
  });

  it('puts the highest worth, the deepest and the shortest walk first, what is not known behind', () => {
    const pegs = [
      peg('1', { worths: { total: 0.8, carp: 1.4 }, depthMetres: 1, walkMetres: 300, stepFree: false }),
      peg('2', { worths: { total: null, carp: null } }),
      peg('3', { worths: { total: 1.2, carp: 0.5 }, depthMetres: 2, walkMetres: 20, stepFree: true }),
      peg('4', { worths: { total: 9 }, depthMetres: 9, walkMetres: 1, stepFree: true, isClosed: true }),
    ];
    expect(names(orderedPegs(pegs, 'worth-total'))).toBe('3 1 2 4');
    expect(names(orderedPegs(pegs, 'worth-carp'))).toBe('1 3 2 4');
    expect(names(orderedPegs(pegs, 'depth'))).toBe('3 1 2 4');
    expect(names(orderedPegs(pegs, 'walk'))).toBe('3 1 2 4');
    expect(names(orderedPegs(pegs, 'step-free'))).toBe('3 1 2 4');
  });
});
