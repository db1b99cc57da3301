import { describe, expect, it } from 'vitest';
import { subsampledModel } from '../../../src/ratings/engine/subsampled-model.ts';
import { mixedModel } from './example-models.ts';

describe('a thinned model', () => {
  const model = mixedModel();
  const thin = subsampledModel(model, 0, 3);

  it('keeps the rows of every third level of the term, with all that belongs to them', () => {
    const { rowStart, column } = model.terms[0]!.rows;
    const kept = Array.from({ length: 90 }, (_, i) => i).filter((i) => column[rowStart[i]!]! % 3 === 0);
    expect([...thin.observations.upper]).toEqual(kept.map((i) => model.observations.upper[i]));
    expect([...thin.fixed[1]!.values]).toEqual(kept.map((i) => model.fixed[1]!.values[i]));
    expect(thin.terms[0]!.columns).toBe(3);
    expect([...thin.terms[0]!.rows.column]).toEqual(kept.map((i) => column[rowStart[i]!]! / 3));
    const feature = model.terms[2]!.rows;
    expect([...thin.terms[2]!.rows.weight]).toEqual(
      kept.flatMap((i) => [...feature.weight.slice(feature.rowStart[i], feature.rowStart[i + 1])]),
    );
  });

  it('leaves other terms their columns', () => {
    expect(thin.terms.slice(1).map(({ columns }) => columns)).toEqual(
      model.terms.slice(1).map(({ columns }) => columns),
    );
  });
});
