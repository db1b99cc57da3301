import type { LatentModel, RandomTerm } from '../../../src/ratings/engine/latent-model.ts';
import { factorRows, sparseRows } from '../../../src/ratings/engine/sparse-rows.ts';

/** A small model with every kind of row and term: exact, left-, right- and interval-censored; a factor, weights, two walks. */
export function mixedModel(rows = 90): LatentModel {
  const at = Array.from({ length: rows }, (_, i) => i);
  const y = at.map((i) => 1 + Math.sin(i * 12.9898) + 0.5 * Math.cos(i * 4.1) + 0.3 * ((i % 7) - 3));
  const kind = (i: number) => (i * 7) % 11;
  return {
    observations: {
      lower: Float64Array.from(at, (i) => (kind(i) === 0 ? -Infinity : kind(i) === 1 ? Math.floor(y[i]!) : y[i]!)),
      upper: Float64Array.from(at, (i) => (kind(i) === 2 ? Infinity : kind(i) === 1 ? Math.floor(y[i]!) + 1 : y[i]!)),
    },
    fixed: [
      { name: 'level', values: new Float64Array(rows).fill(1) },
      { name: 'slope', values: Float64Array.from(at, (i) => (i % 13) / 13) },
    ],
    terms: [
      factor(
        'event',
        7,
        at.map((i) => i % 7),
      ),
      factor(
        'angler',
        5,
        at.map((i) => (i % 4 === 3 ? -1 : (i * 3) % 5)),
      ),
      {
        name: 'feature',
        columns: 3,
        rows: sparseRows(
          at.map((i) =>
            i % 2 === 0
              ? []
              : [
                  { column: i % 3, weight: 1 },
                  { column: (i + 1) % 3, weight: 0.5 },
                ],
          ),
        ),
        prior: { kind: 'independent' },
      },
      {
        name: 'month',
        columns: 24,
        rows: sparseRows(at.map((i) => [{ column: (i % 2) * 12 + ((i * 5) % 12), weight: 1 }])),
        prior: { kind: 'cyclic-walk', positions: 12 },
      },
      {
        name: 'band',
        columns: 5,
        rows: factorRows(at.map((i) => (i % 10 === 9 ? -1 : (i * 2) % 5))),
        prior: { kind: 'walk', positions: 5 },
      },
    ],
  };
}

export function factor(name: string, columns: number, levels: readonly number[]): RandomTerm {
  return { name, columns, rows: factorRows(levels), prior: { kind: 'independent' } };
}
