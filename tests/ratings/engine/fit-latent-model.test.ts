import { describe, expect, it } from 'vitest';
import { fitLatentModel } from '../../../src/ratings/engine/fit-latent-model.ts';
import type {
  LatentFit,
  LatentModel,
  LinearCombination,
  WeakPriors,
} from '../../../src/ratings/engine/latent-model.ts';
import { sparseRows } from '../../../src/ratings/engine/sparse-rows.ts';
import { factor, mixedModel } from './example-models.ts';
import { pegMonthWorths, SMALL_VENUE, simulatedModel } from './simulated-model.ts';

const PRIORS: WeakPriors = { sdScale: 1, residualMedian: 0.6, residualLogSd: 0.7, fixedSpread: 5 };
const OPEN = Number.POSITIVE_INFINITY;

/** Every figure of a fit, to look for one that is not a number. */
function figuresOf(fit: LatentFit): number[] {
  const { mean, sd } = fit.posterior([
    { effects: [{ term: 'event', column: 0, weight: 1 }] },
    {
      effects: [{ term: 'month', column: 3, weight: 1 }],
      minus: { effects: [{ term: 'peg', column: 1, weight: 0.5 }] },
    },
    { fixed: [{ name: 'level', weight: 1 }], effects: [{ term: 'event', column: 1, weight: 1 }] },
  ]);
  const fixed = Object.values(fit.fixed).flatMap(({ value, sd: of }) => [value, of]);
  const { terms, residual } = fit.logSdError;
  return [
    ...Object.values(fit.sd),
    fit.residualSd,
    fit.logMarginal,
    ...fixed,
    ...mean,
    ...sd,
    ...Object.values(terms),
    residual,
  ];
}

/** Twenty rows, or fewer, of a tiny venue: five events, four pegs, one feature by month on some of the rows. */
function tinyModel(
  lower: readonly number[],
  upper: readonly number[] = lower,
  event: (row: number) => number = (row) => row % 5,
  hasFeature: (row: number) => boolean = (row) => row % 3 !== 0,
): LatentModel {
  const rows = lower.map((_, i) => i);
  return {
    observations: { lower: Float64Array.from(lower), upper: Float64Array.from(upper) },
    fixed: [{ name: 'level', values: new Float64Array(lower.length).fill(1) }],
    terms: [
      factor('event', 20, rows.map(event)),
      factor(
        'peg',
        4,
        rows.map((row) => row % 4),
      ),
      {
        name: 'month',
        columns: 12,
        rows: sparseRows(rows.map((row) => (hasFeature(row) ? [{ column: row % 12, weight: 1 }] : []))),
        prior: { kind: 'cyclic-walk', positions: 12 },
      },
    ],
  };
}

const TWENTY = Array.from({ length: 20 }, (_, i) => 1 + Math.sin(7.3 * i));
const all = (value: number) => TWENTY.map(() => value);

const AWKWARD: Readonly<Record<string, LatentModel>> = {
  'no rows': tinyModel([]),
  'one row': tinyModel([1]),
  'two equal rows': tinyModel([1, 1]),
  'one event': tinyModel(TWENTY, TWENTY, () => 0),
  'an event of its own for each row': tinyModel(TWENTY, TWENTY, (row) => row),
  'a feature on every row': tinyModel(TWENTY, TWENTY, undefined, () => true),
  'a feature on no row': tinyModel(TWENTY, TWENTY, undefined, () => false),
  'every row left-censored': tinyModel(all(-OPEN), TWENTY),
  'every row left-censored at one bound': tinyModel(all(-OPEN), all(-6.9)),
  'every row right-censored': tinyModel(TWENTY, all(OPEN)),
  'one row exact, the rest censored': tinyModel(
    TWENTY.map((y, i) => (i === 0 ? y : -OPEN)),
    TWENTY,
  ),
  'nothing known of any row': tinyModel(all(-OPEN), all(OPEN)),
  'equal values': tinyModel(all(2)),
  'values that the events explain whole': tinyModel(TWENTY.map((_, i) => i % 5)),
  'logs of weights over six orders of magnitude': tinyModel(TWENTY.map((_, i) => Math.log(10) * ((i % 7) - 3))),
  'weights over six orders of magnitude, not in logs': tinyModel(TWENTY.map((_, i) => 10 ** (i % 7))),
  'a bound a thousand units off': tinyModel(
    TWENTY.map((y, i) => (i === 3 ? -OPEN : y)),
    TWENTY.map((y, i) => (i === 3 ? -1000 : y)),
  ),
};

describe('awkward data', () => {
  it.each(Object.keys(AWKWARD))('%s: a defined result, with priors and without', (name) => {
    const model = AWKWARD[name]!;
    for (const options of [{}, { weakPriors: PRIORS }, { weakPriors: PRIORS, variances: 'integrated' as const }]) {
      expect(figuresOf(fitLatentModel(model, options)).filter(Number.isNaN)).toEqual([]);
    }
  });

  it('without a row stands at the priors: no effect known, full width', () => {
    const fit = fitLatentModel(AWKWARD['no rows']!, { weakPriors: PRIORS, variances: 'integrated' });
    const { mean, sd } = fit.posterior([{ effects: [{ term: 'peg', column: 0, weight: 1 }] }]);
    expect(fit.stopped).toBe('no data');
    expect(mean[0]).toBe(0);
    expect(sd[0]).toBeGreaterThan(0.7);
    expect(fit.fixed.level).toEqual({ value: 0, sd: OPEN });
  });

  it('keeps the prior of an effect that no row touches', () => {
    const model = tinyModel(TWENTY);
    const fit = fitLatentModel(
      {
        ...model,
        terms: [
          factor(
            'event',
            6,
            TWENTY.map((_, i) => i % 5),
          ),
        ],
      },
      { hold: { sd: { event: 0.5 } } },
    );
    const { mean, sd } = fit.posterior([{ effects: [{ term: 'event', column: 5, weight: 1 }] }]);
    expect(mean[0]).toBe(0);
    expect(sd[0]).toBeCloseTo(0.5, 12);
  });

  it('calls a fixed effect that repeats another unknown, and keeps the first', () => {
    const model = tinyModel(TWENTY);
    const twice = { ...model, fixed: [...model.fixed, { name: 'again', values: new Float64Array(20).fill(2) }] };
    const fit = fitLatentModel(twice);
    expect(fit.fixed.again).toEqual({ value: 0, sd: OPEN });
    expect(fit.fixed.level!.value).toBeCloseTo(fitLatentModel(model).fixed.level!.value, 10);
  });
});

describe('a fit', () => {
  const model = mixedModel();
  const fit = fitLatentModel(model, { tolerance: 1e-8 });
  const sds = (of: LatentFit) => [...Object.values(of.sd), of.residualSd];

  it('is the same to the last bit when done again, and changes nothing it was given', () => {
    const before = JSON.stringify(model, (_, value) =>
      ArrayBuffer.isView(value) ? [...(value as Float64Array)] : value,
    );
    expect(figuresAgain()).toEqual(figuresAgain());
    const after = JSON.stringify(model, (_, value) =>
      ArrayBuffer.isView(value) ? [...(value as Float64Array)] : value,
    );
    expect(after).toBe(before);

    function figuresAgain() {
      const again = fitLatentModel(model, { weakPriors: PRIORS, variances: 'integrated' });
      return [...sds(again), again.logMarginal, ...again.effects('month')];
    }
  });

  it('does not depend on the order of the terms', () => {
    const turned = fitLatentModel({ ...model, terms: [...model.terms].reverse() }, { tolerance: 1e-8 });
    expect(turned.logMarginal).toBeCloseTo(fit.logMarginal, 8);
    for (const [name, sd] of Object.entries(fit.sd)) expect(turned.sd[name]).toBeCloseTo(sd, 5);
  });

  it('follows a change of units and of origin', () => {
    const shift = (bound: number) => 10 + 3 * bound;
    const { lower, upper } = model.observations;
    const scaled = fitLatentModel(
      { ...model, observations: { lower: lower.map(shift), upper: upper.map(shift) } },
      { tolerance: 1e-8 },
    );
    sds(scaled).forEach((sd, i) => {
      expect(sd).toBeCloseTo(3 * sds(fit)[i]!, 4);
    });
    expect(scaled.fixed.level!.value).toBeCloseTo(10 + 3 * fit.fixed.level!.value, 4);
  });

  it('finds the same from a start of its own choosing and from one it is given, the latter sooner', () => {
    const { sd, residualSd } = fit;
    const again = fitLatentModel(model, { tolerance: 1e-6, start: { sd, residualSd } });
    expect(again.logMarginal).toBeCloseTo(fit.logMarginal, 8);
    expect(again.iterations).toBeLessThan(fit.iterations);
  });

  it('makes every walk sum to zero in each of its groups', () => {
    const months = fit.effects('month');
    expect(months).toHaveLength(24);
    for (const group of [months.slice(0, 12), months.slice(12)]) {
      expect(group.reduce((a, b) => a + b)).toBeCloseTo(0, 10);
    }
  });

  it('reports every step, and stops for a reason', () => {
    const distances: number[] = [];
    const told = fitLatentModel(model, { progress: ({ distance }) => distances.push(distance) });
    expect(distances).toHaveLength(told.iterations);
    expect(distances.at(-1)).toBeLessThanOrEqual(1e-6);
    expect(['converged', 'boundary']).toContain(told.stopped);
    expect(fitLatentModel(model, { maximumIterations: 2 }).stopped).toBe('iteration limit');
    const hold = { sd: fit.sd, residualSd: fit.residualSd };
    expect(fitLatentModel(model, { hold }).stopped).toBe('held');
  });

  it('refuses what is not consistent, saying where', () => {
    const { observations, fixed, terms } = model;
    const bad = observations.lower.slice();
    bad[4] = observations.upper[4]! + 1;
    expect(() => fitLatentModel({ observations: { ...observations, lower: bad }, fixed, terms })).toThrow(
      /^row 4: bounds/,
    );
    expect(() => fitLatentModel({ observations, fixed: [{ name: 'x', values: new Float64Array(3) }], terms })).toThrow(
      'fixed effect x: 3 values for 90 rows',
    );
    expect(() =>
      fitLatentModel({
        observations,
        fixed,
        terms: [
          factor(
            'peg',
            2,
            Array.from({ length: 90 }, () => 2),
          ),
        ],
      }),
    ).toThrow('term peg: a column outside 0 to 1');
    expect(() => fitLatentModel(model, { variances: 'integrated' })).toThrow('needs weak priors');
    expect(() => fitLatentModel(model, { hold: { residualSd: 0 } })).toThrow('the residual sd cannot be held at 0');
    expect(() => fit.posterior([{ effects: [{ term: 'peg', column: 0, weight: 1 }] }])).toThrow('no term peg');
    expect(() => fit.posterior([{ effects: [{ term: 'event', column: 7, weight: 1 }] }])).toThrow(
      'term event: no column 7',
    );
  });
});

describe('linear combinations', () => {
  const { model } = simulatedModel({ ...SMALL_VENUE, events: 24, pegs: 12, anglers: 20, field: 8, features: 2 });

  /** A combination with what it is less written out. */
  function writtenOut({ effects, minus }: LinearCombination): LinearCombination {
    const rest = minus === undefined ? [] : writtenOut(minus).effects;
    return { effects: [...effects, ...rest.map(({ term, column, weight }) => ({ term, column, weight: -weight }))] };
  }

  it('are the same with a shared mean subtracted and written out, eliminated effects or not', () => {
    const fit = fitLatentModel(model, { weakPriors: PRIORS, variances: 'integrated' });
    const sim = simulatedModel({ ...SMALL_VENUE, events: 24, pegs: 12, anglers: 20, field: 8, features: 2 });
    const worths = pegMonthWorths(sim).map(({ combination }) => combination);
    const event = (column: number, weight: number) => ({ term: 'event', column, weight });
    const mixed: LinearCombination[] = [
      {
        effects: [event(0, 1)],
        minus: { effects: [event(1, 0.5), event(2, 0.5), { term: 'peg', column: 0, weight: 1 }] },
      },
      { effects: [event(3, 1)], minus: { effects: [event(3, 1)], minus: { effects: [event(4, 2)] } } },
    ];
    const asked = [...worths, ...mixed];
    const shared = fit.posterior(asked);
    const written = fit.posterior(asked.map(writtenOut));
    asked.forEach((_, i) => {
      expect(shared.mean[i]).toBeCloseTo(written.mean[i]!, 9);
      expect(shared.sd[i]).toBeCloseTo(written.sd[i]!, 7);
    });
  });

  it('of single effects have the modes as means where the variances are not integrated', () => {
    const fit = fitLatentModel(model);
    for (const { name, columns } of model.terms) {
      const each = Array.from({ length: columns }, (_, column) => ({ effects: [{ term: name, column, weight: 1 }] }));
      const { mean, sd } = fit.posterior(each);
      const modes = fit.effects(name);
      modes.forEach((mode, i) => {
        expect(mean[i]).toBeCloseTo(mode, 12);
      });
      if (fit.sd[name]! > 0) expect(sd.every((value) => value > 0)).toBe(true);
    }
  });

  it('go together as their sum does, and each has the doubt that it has alone', () => {
    const fit = fitLatentModel(simulatedModel(SMALL_VENUE).model, { weakPriors: PRIORS });
    const [a, b] = [
      { term: 'peg', column: 0, weight: 1 },
      { term: 'peg', column: 1, weight: 1 },
    ];
    const combinations = [{ effects: [a] }, { effects: [b] }, { effects: [a, b] }];
    const { mean, covariance } = fit.jointAtMode(combinations);
    const at = (i: number, j: number) => covariance[3 * i + j]!;
    expect(mean[2]).toBeCloseTo(mean[0]! + mean[1]!, 10);
    expect(at(2, 2)).toBeCloseTo(at(0, 0) + at(1, 1) + 2 * at(0, 1), 10);
    for (const [i, j] of [
      [0, 1],
      [0, 2],
      [1, 2],
    ] as const) {
      expect(at(i, j)).toBe(at(j, i));
    }
    fit.posterior(combinations).sd.forEach((sd, i) => {
      expect(Math.sqrt(at(i, i))).toBeCloseTo(sd, 10);
    });
    const cross = fit.crossAtMode(combinations.slice(0, 1), combinations.slice(1));
    expect(cross[0]![0]).toBeCloseTo(at(0, 1), 10);
    expect(cross[0]![1]).toBeCloseTo(at(0, 2), 10);
  });
});
