import { describe, expect, test } from 'vitest';
import type { LatentFit, LatentModel } from '../../src/ratings/engine/latent-model.ts';
import { factorRows } from '../../src/ratings/engine/sparse-rows.ts';
import { priorSds, unitVariance } from '../../src/ratings/prior-sd.ts';

describe('unitVariance', () => {
  test('of a month in a cyclic walk is 143/144', () => {
    // Rue and Held, Gaussian Markov Random Fields, 2005, ch. 3: diagonal of the pseudo-inverse of the circle's structure.
    expect(unitVariance({ kind: 'cyclic-walk', positions: 12 }, 29)).toBeCloseTo(143 / 144, 14);
  });

  test('of a band in a walk along a line is the diagonal of its pseudo-inverse', () => {
    // By its eigenvectors: cosines of frequency k with eigenvalue 2 − 2 cos(πk/n) (the discrete cosine basis).
    const n = 9;
    for (let i = 0; i < n; i++) {
      let expected = 0;
      for (let k = 1; k < n; k++) {
        expected += ((2 / n) * Math.cos((Math.PI * k * (i + 0.5)) / n) ** 2) / (2 - 2 * Math.cos((Math.PI * k) / n));
      }
      expect(unitVariance({ kind: 'walk', positions: n }, 2 * n + i)).toBeCloseTo(expected, 12);
    }
  });
});

describe('priorSds', () => {
  const term = (name: string) => ({
    name,
    columns: 3,
    rows: factorRows([]),
    prior: { kind: 'independent' as const },
  });
  const model: LatentModel = {
    observations: { lower: new Float64Array(), upper: new Float64Array() },
    fixed: [],
    terms: [term('peg'), term('feature')],
  };
  const priorSd = priorSds(model, { sd: { peg: 0.3, feature: 0.4 } } as unknown as LatentFit);

  test('adds the squares of what each effect may do', () => {
    const effects = [
      { term: 'peg', column: 0, weight: 1 },
      { term: 'feature', column: 2, weight: -1 },
    ];
    expect(priorSd({ effects })).toBeCloseTo(0.5, 14);
  });

  test('nets an effect that stands on both sides', () => {
    const peg = { term: 'peg', column: 0, weight: 1 };
    const minus = {
      effects: [
        { ...peg, weight: 0.5 },
        { term: 'peg', column: 1, weight: 0.5 },
      ],
    };
    expect(priorSd({ effects: [peg], minus })).toBeCloseTo(0.3 * Math.SQRT1_2, 14);
    expect(priorSd({ effects: [peg], minus: { effects: [peg] } })).toBe(0);
  });
});
