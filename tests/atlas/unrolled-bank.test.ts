import { describe, expect, it } from 'vitest';
import { depthOut, unrolledBank } from '../../src/atlas/unrolled-bank.ts';
import { pegKey } from '../../src/domain/peg.ts';
import { examplePeg } from '../domain/example-venue.ts';
import { EXAMPLE_PEG_SURVEY, exampleAtlas } from './example-atlas.ts';

const point = (distanceMetres: number, depthMetres: number | null, land = false) => ({
  distanceMetres,
  depthMetres,
  land,
});

function bankOf(gaps: Readonly<Record<string, string>>, status: 'open' | 'closed' = 'open') {
  const pegs = [...new Set([...Object.keys(gaps), ...Object.values(gaps)])]
    .sort()
    .map((peg) => examplePeg(peg, { status, ...(status === 'closed' ? { statusReason: 'Works.' } : {}) }));
  const surveys = Object.fromEntries(
    pegs.map(({ peg }) => {
      const right = gaps[peg];
      const neighbours =
        right === undefined || right === peg
          ? []
          : [{ peg: pegKey('pit', right), side: 'right' as const, gapMetres: 10 + Number(peg) }];
      return [pegKey('pit', peg), { ...EXAMPLE_PEG_SURVEY, neighbours, profile: [point(0, 0.4), point(12, 2)] }];
    }),
  );
  const atlas = exampleAtlas({ venue: { pegs } });
  return unrolledBank({ ...atlas, survey: { ...atlas.survey, pegs: surveys } }, 'pit');
}

describe('unrolledBank', () => {
  it('runs to the right along the bank and ends at its widest gap', () => {
    const { stretches } = bankOf({ 1: '3', 2: '1', 3: '2' });
    expect(stretches.map(({ name }) => name)).toEqual(['Pegs 2 to 3, left to right as you face the water']);
    const order = [...stretches[0]!.tiles[0]!.matchAll(/aria-label="Peg (\d)/g)].map(([, peg]) => peg);
    expect(order).toEqual(['2', '1', '3']);
  });

  it('keeps an island apart from the bank, and a peg that stands alone on one', () => {
    const { stretches } = bankOf({ 1: '2', 2: '1', 3: '3' });
    expect(stretches.map(({ name }) => name.replace(/,.*/, ''))).toEqual(['Pegs 1 to 2', 'Peg 3']);
  });

  it('says that a closed peg is closed', () => {
    const { stretches } = bankOf({ 1: '1' }, 'closed');
    expect(stretches[0]!.tiles[0]).toContain('aria-label="Peg 1, closed (Works.), 1.87 m at 11 m"');
  });

  it('draws nothing of a water without pegs', () => {
    expect(bankOf({}).stretches).toEqual([]);
  });
});

describe('depthOut', () => {
  const profile = [point(1, 0.5), point(3, 1.5), point(5, null), point(7, 2), point(8, 0, true)];
  it.each([
    [1, 0.5],
    [2, 1],
    [3, 1.5],
    [4, null],
    [5, null],
    [6, null],
    [7, 2],
    [8, 0],
    [0.5, null],
    [9, null],
  ])('%d m out: %s', (metres, depth) => {
    expect(depthOut(profile, metres)).toBe(depth);
  });
});
