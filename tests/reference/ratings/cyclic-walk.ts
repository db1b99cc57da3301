import { fitLatentModel } from '../../../src/ratings/engine/fit-latent-model.ts';
import type { LatentModel, LinearCombination, RandomTerm } from '../../../src/ratings/engine/latent-model.ts';
import { factorRows } from '../../../src/ratings/engine/sparse-rows.ts';
import { walkBasis } from '../../../src/ratings/engine/walk-basis.ts';
import reference from '../data/cyclic-walk.json' with { type: 'json' };
import { FigureList, type ReferenceCase } from './figure.ts';
import { eachOf, exactly, factor, intercept, TIGHT } from './stated-models.ts';

const { data, expected } = reference;
const MONTHS = 12;

function walkOf(months: readonly number[]): RandomTerm {
  return {
    name: 'month',
    columns: MONTHS,
    rows: factorRows(months.map((month) => month - 1)),
    prior: { kind: 'cyclic-walk', positions: MONTHS },
  };
}

interface StatedPosterior {
  readonly s2e: number;
  readonly s2w: number;
  readonly known_mu: number;
  readonly known_mu_unconstrained: { readonly mean: number[]; readonly var: number[] };
  readonly known_mu_sum_to_zero: { readonly mean: number[]; readonly var: number[] };
  readonly flat_mu_sum_to_zero: {
    readonly mu: number;
    readonly mu_var: number;
    readonly s_mean: number[];
    readonly s_var: number[];
    readonly fitted_mean: number[];
    readonly fitted_var: number[];
  };
}

/** Posterior of the twelve months at stated variances, from single temperatures: level known, or flat. */
function posteriorFigures(
  list: FigureList,
  name: string,
  stated: StatedPosterior,
  keep: (row: number) => boolean,
): void {
  const rows = data.month.map((_, i) => i).filter(keep);
  const months = rows.map((i) => data.month[i]!);
  const values = rows.map((i) => data.temperature_f[i]!);
  const walk = walkOf(months);
  const each = eachOf(walk);
  const hold = { sd: { month: Math.sqrt(stated.s2w) }, residualSd: Math.sqrt(stated.s2e) };
  const aboutLevel = values.map((value) => value - stated.known_mu);
  const square = ({ sd }: { readonly sd: Float64Array }) => sd.map((value) => value * value);

  const known = fitLatentModel({ observations: exactly(aboutLevel), fixed: [], terms: [walk] }, { hold }).posterior(
    each,
  );
  list.worst(`${name}: level known, mean`, 1e-8, stated.known_mu_sum_to_zero.mean, known.mean);
  list.worst(`${name}: level known, variance`, 1e-8, stated.known_mu_sum_to_zero.var, square(known));

  const level: LatentModel = { observations: exactly(values), fixed: [intercept(values.length)], terms: [walk] };
  const flat = fitLatentModel(level, { hold });
  const ofWalk = flat.posterior(each);
  const withLevel = each.map(
    (combination): LinearCombination => ({ ...combination, fixed: [{ name: 'intercept', weight: 1 }] }),
  );
  const fitted = flat.posterior(withLevel);
  list.absolute(1e-8, {
    [`${name}: level flat, level`]: [stated.flat_mu_sum_to_zero.mu, flat.fixed.intercept!.value],
    [`${name}: level flat, variance of level`]: [stated.flat_mu_sum_to_zero.mu_var, flat.fixed.intercept!.sd ** 2],
  });
  list.worst(`${name}: level flat, mean`, 1e-8, stated.flat_mu_sum_to_zero.s_mean, ofWalk.mean);
  list.worst(`${name}: level flat, variance`, 1e-8, stated.flat_mu_sum_to_zero.s_var, square(ofWalk));
  list.worst(`${name}: fitted mean`, 1e-8, stated.flat_mu_sum_to_zero.fitted_mean, fitted.mean);
  list.worst(`${name}: fitted variance`, 1e-8, stated.flat_mu_sum_to_zero.fitted_var, square(fitted));

  // A walk that need not sum to zero is one that does, with a flat level beside it.
  const free = fitLatentModel({ ...level, observations: exactly(aboutLevel) }, { hold }).posterior(withLevel);
  list.worst(`${name}: without the sum, mean`, 1e-8, stated.known_mu_unconstrained.mean, free.mean);
  list.worst(`${name}: without the sum, variance`, 1e-8, stated.known_mu_unconstrained.var, square(free));
}

const exactPosterior: ReferenceCase = {
  name: 'cyclic walk, exact posterior',
  source: reference.source,
  figures() {
    const list = new FigureList(this.name);
    const basis = walkBasis('cyclic-walk', MONTHS);
    const columns = MONTHS - 1;
    const inner = (i: number, j: number) =>
      Array.from({ length: columns }, (_, k) => basis[i * columns + k]! * basis[j * columns + k]!).reduce(
        (a, b) => a + b,
      );
    list.worst(
      'pseudo-inverse, first row',
      1e-12,
      expected.structure.pinv_first_row,
      Array.from({ length: MONTHS }, (_, j) => inner(0, j)),
    );
    posteriorFigures(list, 'every month, light', expected.balanced.light, () => true);
    posteriorFigures(list, 'every month, heavy', expected.balanced.heavy, () => true);
    posteriorFigures(list, 'empty months, light', expected.ragged.light, (i) => data.ragged_keep[i]!);
    posteriorFigures(list, 'empty months, heavy', expected.ragged.heavy, (i) => data.ragged_keep[i]!);
    return list.figures;
  },
};

const restricted: ReferenceCase = {
  name: 'cyclic walk, restricted maximum likelihood',
  source: `${reference.source}; REML by dense algebra, agreed with mgcv 1.8.41`,
  figures() {
    const list = new FigureList(this.name);
    const observations = exactly(data.temperature_f);
    const fixed = [intercept(data.month.length)];
    const walk = walkOf(data.month);
    const year = factor('year', data.year);

    const alone = fitLatentModel({ observations, fixed, terms: [walk] }, { tolerance: TIGHT });
    const monthOnly = expected.reml_month_only;
    list.relative(1e-5, {
      'month only: walk variance': [monthOnly.s2w, alone.sd.month! ** 2],
      'month only: residual variance': [monthOnly.s2e, alone.residualSd ** 2],
      'month only: SE of level': [monthOnly.mu_se, alone.fixed.intercept!.sd],
    });
    list.absolute(1e-6, { 'month only: REML criterion': [monthOnly.reml_criterion, -2 * alone.logMarginal] });

    const both = { observations, fixed, terms: [walk, year] };
    const fit = fitLatentModel(both, { tolerance: TIGHT });
    const likely = fitLatentModel(both, { tolerance: TIGHT, fixedEffects: 'maximised' });
    const withYear = expected.reml_month_and_year;
    list.relative(1e-5, {
      'month and year: walk variance': [withYear.s2w, fit.sd.month! ** 2],
      'month and year: year variance': [withYear.s2_year, fit.sd.year! ** 2],
      'month and year: residual variance': [withYear.s2e, fit.residualSd ** 2],
      'month and year: SE of level': [withYear.mu_se, fit.fixed.intercept!.sd],
      'month and year: ML walk variance': [withYear.ml.s2w, likely.sd.month! ** 2],
      'month and year: ML year variance': [withYear.ml.s2_year, likely.sd.year! ** 2],
      'month and year: ML residual variance': [withYear.ml.s2e, likely.residualSd ** 2],
    });
    list.absolute(1e-6, {
      'month and year: REML criterion': [withYear.reml_criterion, -2 * fit.logMarginal],
      'month and year: ML deviance': [withYear.ml.ml_deviance, -2 * likely.logMarginal],
    });
    for (const point of withYear.reml_criterion_at) {
      const hold = {
        sd: { month: Math.sqrt(point.s2w), year: Math.sqrt(point.s2_year) },
        residualSd: Math.sqrt(point.s2e),
      };
      list.absolute(1e-6, {
        'month and year: criterion at stated variances': [
          point.reml_criterion,
          -2 * fitLatentModel(both, { hold }).logMarginal,
        ],
      });
    }
    list.worst('month and year: month modes', 1e-5, withYear.month_modes, fit.posterior(eachOf(walk)).mean);
    list.worst('month and year: month sds', 1e-5, withYear.month_sd_prediction, fit.posterior(eachOf(walk)).sd);
    list.worst('month and year: year modes', 1e-5, withYear.year_modes, fit.posterior(eachOf(year)).mean);
    list.worst('month and year: year sds', 1e-5, withYear.year_sd_prediction, fit.posterior(eachOf(year)).sd);

    const rows = data.month.map((_, i) => i).filter((i) => data.ragged_keep[i]);
    const raggedWalk = walkOf(rows.map((i) => data.month[i]!));
    const ragged = fitLatentModel(
      {
        observations: exactly(rows.map((i) => data.temperature_f[i]!)),
        fixed: [intercept(rows.length)],
        terms: [raggedWalk],
      },
      { tolerance: TIGHT },
    );
    const gaps = expected.reml_ragged_month_only;
    list.relative(1e-5, {
      'empty months: walk variance': [gaps.s2w, ragged.sd.month! ** 2],
      'empty months: residual variance': [gaps.s2e, ragged.residualSd ** 2],
      'empty months: level': [gaps.mu, ragged.fixed.intercept!.value],
      'empty months: SE of level': [gaps.mu_se, ragged.fixed.intercept!.sd],
    });
    list.absolute(1e-6, { 'empty months: REML criterion': [gaps.reml_criterion, -2 * ragged.logMarginal] });
    list.worst('empty months: month modes', 1e-4, gaps.month_modes, ragged.posterior(eachOf(raggedWalk)).mean);
    list.worst('empty months: month sds', 1e-4, gaps.month_sd_prediction, ragged.posterior(eachOf(raggedWalk)).sd);
    return list.figures;
  },
};

/** The walk over the months: its exact posterior with stated variances, and its variances by REML. */
export const CYCLIC_WALKS: readonly ReferenceCase[] = [exactPosterior, restricted];
