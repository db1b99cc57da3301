import { describe, expect, it } from 'vitest';
import { walkBasis } from '../../../src/ratings/engine/walk-basis.ts';

describe.each(['cyclic-walk', 'walk'] as const)('the basis of a %s', (kind) => {
  it.each([2, 3, 4, 7, 12, 15])('over %i positions undoes the structure matrix but for the level', (positions) => {
    const columns = positions - 1;
    const basis = walkBasis(kind, positions);
    const structure = (i: number, j: number): number => {
      let sum = 0;
      const steps = kind === 'walk' ? positions - 1 : positions;
      for (let s = 0; s < steps; s++) {
        const ends = [s, (s + 1) % positions];
        const d = (k: number) => (k === ends[0] ? 1 : 0) - (k === ends[1] ? 1 : 0);
        sum += d(i) * d(j);
      }
      return sum;
    };
    for (let i = 0; i < positions; i++) {
      for (let j = 0; j < positions; j++) {
        // K B Bᵀ is the projection that takes the mean away.
        let sum = 0;
        for (let k = 0; k < positions; k++) {
          for (let c = 0; c < columns; c++) sum += structure(i, k) * basis[k * columns + c]! * basis[j * columns + c]!;
        }
        expect(sum).toBeCloseTo((i === j ? 1 : 0) - 1 / positions, 12);
      }
    }
    for (let c = 0; c < columns; c++) {
      let total = 0;
      for (let i = 0; i < positions; i++) total += basis[i * columns + c]!;
      expect(total).toBeCloseTo(0, 12);
    }
  });
});
