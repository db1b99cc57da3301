import type {
  LatentModel,
  LinearCombination,
  RandomTerm,
  SparseRows,
} from '../../../src/ratings/engine/latent-model.ts';
import { factorRows, sparseRows } from '../../../src/ratings/engine/sparse-rows.ts';
import { type Chance, seededChance } from '../../demo/chance.ts';
import { drawCyclicWalk } from '../../demo/log/cyclic-walk.ts';

/** Sizes and sds of a model to be drawn, on the log scale of weights. */
export interface SimulatedSize {
  readonly seed: number;
  readonly pegs: number;
  readonly anglers: number;
  readonly events: number;
  readonly field: number;
  readonly features: number;
  readonly sd: {
    readonly event: number;
    readonly angler: number;
    readonly peg: number;
    readonly feature: number;
    readonly featureMonth: number;
    readonly residual: number;
  };
}

export const SMALL_VENUE: SimulatedSize = {
  seed: 1,
  pegs: 60,
  anglers: 80,
  events: 70,
  field: 28,
  features: 6,
  sd: { event: 0.7, angler: 0.35, peg: 0.2, feature: 0.15, featureMonth: 0.25, residual: 0.6 },
};

/** A model with its truth: numbers only, drawn exactly as the engine's model says, with `value` before any censoring. */
export interface SimulatedModel {
  readonly model: LatentModel;
  readonly value: Float64Array;
  readonly event: Int32Array;
  readonly features: readonly (readonly number[])[];
  readonly truth: {
    readonly peg: readonly number[];
    readonly feature: readonly number[];
    readonly featureMonth: readonly (readonly number[])[];
  };
}

const MONTHS = 12;

/** Draws a model: in each event `field` pegs and as many anglers by lot, every peg with one to three features. */
export function simulatedModel(size: SimulatedSize): SimulatedModel {
  const chance = seededChance(size.seed);
  const normals = (count: number, sd: number) => Array.from({ length: count }, () => sd * chance.normal());
  const truth = {
    peg: normals(size.pegs, size.sd.peg),
    feature: normals(size.features, size.sd.feature),
    featureMonth: Array.from({ length: size.features }, () => drawCyclicWalk(MONTHS, size.sd.featureMonth, chance)),
  };
  const ofAngler = normals(size.anglers, size.sd.angler);
  const ofEvent = normals(size.events, size.sd.event);
  const features = Array.from({ length: size.pegs }, () => drawFeatures(size.features, chance));
  const rows = size.events * size.field;
  const event = new Int32Array(rows);
  const peg = new Int32Array(rows);
  const angler = new Int32Array(rows);
  const value = new Float64Array(rows);
  for (let e = 0, row = 0; e < size.events; e++) {
    const month = e % MONTHS;
    const pegs = firstOfShuffled(size.pegs, size.field, chance);
    const anglers = firstOfShuffled(size.anglers, size.field, chance);
    for (let k = 0; k < size.field; k++, row++) {
      const p = pegs[k]!;
      event[row] = e;
      peg[row] = p;
      angler[row] = anglers[k]!;
      const ofFeatures = features[p]!.reduce((sum, f) => sum + truth.feature[f]! + truth.featureMonth[f]![month]!, 0);
      value[row] =
        2 + ofEvent[e]! + ofAngler[angler[row]!]! + truth.peg[p]! + ofFeatures + size.sd.residual * chance.normal();
    }
  }
  const ofRow = (columns: (feature: number, month: number) => number): SparseRows =>
    sparseRows(
      Array.from(peg, (p, row) => features[p]!.map((f) => ({ column: columns(f, event[row]! % MONTHS), weight: 1 }))),
    );
  const independent = (name: string, columns: number, rowsOf: SparseRows): RandomTerm => ({
    name,
    columns,
    rows: rowsOf,
    prior: { kind: 'independent' },
  });
  return {
    model: {
      observations: { lower: value, upper: value },
      fixed: [{ name: 'level', values: new Float64Array(rows).fill(1) }],
      terms: [
        independent('event', size.events, factorRows(event)),
        independent('angler', size.anglers, factorRows(angler)),
        independent('peg', size.pegs, factorRows(peg)),
        independent(
          'feature',
          size.features,
          ofRow((f) => f),
        ),
        {
          name: 'featureMonth',
          columns: size.features * MONTHS,
          rows: ofRow((f, month) => f * MONTHS + month),
          prior: { kind: 'cyclic-walk', positions: MONTHS },
        },
      ],
    },
    value,
    event,
    features,
    truth,
  };
}

function drawFeatures(count: number, chance: Chance): number[] {
  if (count === 0) return [];
  return firstOfShuffled(count, Math.min(count, 1 + Math.floor(3 * chance.between(0, 1))), chance).sort(
    (a, b) => a - b,
  );
}

/** `count` different numbers below `size`, by lot. */
function firstOfShuffled(size: number, count: number, chance: Chance): number[] {
  const numbers = Array.from({ length: size }, (_, i) => i);
  for (let i = 0; i < count; i++) {
    const j = i + Math.min(size - 1 - i, Math.floor(chance.between(0, size - i)));
    [numbers[i], numbers[j]] = [numbers[j]!, numbers[i]!];
  }
  return numbers.slice(0, count);
}

/** A combination with its true value. */
export interface TrueCombination {
  readonly combination: LinearCombination;
  readonly truth: number;
}

/** Every peg's worth in every month: its own and its features' sum less the mean of the same over the pegs. */
export function pegMonthWorths({ features, truth }: SimulatedModel): TrueCombination[] {
  return Array.from({ length: MONTHS }, (_, month) => month).flatMap((month) => {
    const effectsOf = (p: number, weight: number) => [
      { term: 'peg', column: p, weight },
      ...features[p]!.flatMap((f) => [
        { term: 'feature', column: f, weight },
        { term: 'featureMonth', column: f * MONTHS + month, weight },
      ]),
    ];
    const sum = (p: number) =>
      features[p]!.reduce((all, f) => all + truth.feature[f]! + truth.featureMonth[f]![month]!, truth.peg[p]!);
    const mean = features.reduce((all, _, p) => all + sum(p), 0) / features.length;
    const minus: LinearCombination = { effects: features.flatMap((_, p) => effectsOf(p, 1 / features.length)) };
    return features.map((_, p) => ({ combination: { effects: effectsOf(p, 1), minus }, truth: sum(p) - mean }));
  });
}

/** Every feature's effect in every month. */
export function featureMonthWorths({ truth }: SimulatedModel): TrueCombination[] {
  return truth.featureMonth.flatMap((walk, f) =>
    walk.map((value, month) => ({
      combination: {
        effects: [
          { term: 'feature', column: f, weight: 1 },
          { term: 'featureMonth', column: f * MONTHS + month, weight: 1 },
        ],
      },
      truth: truth.feature[f]! + value,
    })),
  );
}

/** Share of truths inside mean ± `width` sds. */
export function coverage(
  combinations: readonly TrueCombination[],
  posterior: { readonly mean: Float64Array; readonly sd: Float64Array },
  width: number,
): number {
  const inside = combinations.filter(
    ({ truth }, i) => Math.abs(truth - posterior.mean[i]!) <= width * posterior.sd[i]!,
  );
  return inside.length / combinations.length;
}
