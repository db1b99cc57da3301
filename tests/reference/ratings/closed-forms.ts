import { fitLatentModel } from '../../../src/ratings/engine/fit-latent-model.ts';
import { logNormalCdf, normalCdf } from '../../../src/ratings/engine/normal-cdf.ts';
import { normalQuantile } from '../../../src/ratings/engine/normal-quantile.ts';
import { FigureList, type ReferenceCase } from './figure.ts';
import { exactly, factor, intercept, TIGHT } from './stated-models.ts';

const railCase: ReferenceCase = {
  name: 'Rail, travel of an ultrasonic wave',
  source:
    'Pinheiro and Bates, Mixed-Effects Models in S and S-PLUS, 2000, section 1.1: data, estimates and log-likelihood from memory; ' +
    'beside them the closed form of a balanced one-way layout (Searle, Casella and McCulloch, Variance Components, 1992, 4.5)',
  figures() {
    const rails = [
      [55, 53, 54],
      [26, 37, 32],
      [78, 91, 85],
      [92, 100, 96],
      [49, 51, 50],
      [80, 85, 83],
    ];
    const fit = fitLatentModel(
      {
        observations: exactly(rails.flat()),
        fixed: [intercept(18)],
        terms: [
          factor(
            'rail',
            rails.flatMap((of, rail) => of.map(() => rail)),
          ),
        ],
      },
      { tolerance: TIGHT },
    );
    const mean = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / values.length;
    const means = rails.map(mean);
    const between = (3 * means.reduce((sum, m) => sum + (m - mean(means)) ** 2, 0)) / 5;
    const within = rails.reduce((sum, of, i) => sum + of.reduce((s, y) => s + (y - means[i]!) ** 2, 0), 0) / 12;
    return new FigureList(this.name)
      .relative(1e-9, {
        'variance between, closed form': [(between - within) / 3, fit.sd.rail! ** 2],
        'variance within, closed form': [within, fit.residualSd ** 2],
        'SE of the mean, closed form': [Math.sqrt(between / 18), fit.fixed.intercept!.sd],
      })
      .relative(1e-6, {
        'sd of rails (from memory)': [24.80547, fit.sd.rail!],
        'residual sd (from memory)': [4.020779, fit.residualSd],
        'SE of the mean (from memory)': [10.17104, fit.fixed.intercept!.sd],
      })
      .absolute(1e-4, { 'restricted log-likelihood (from memory)': [-61.0885, fit.logMarginal] }).figures;
  },
};

const normalCase: ReferenceCase = {
  name: 'normal distribution',
  source: 'SciPy 1.10.1: special.ndtr, log_ndtr, ndtri; asymptotic series of Abramowitz and Stegun, 26.2.12, at −1e8',
  figures() {
    const list = new FigureList(this.name);
    const logs: [number, number][] = [
      [-40, -804.6084420137539],
      [-38, -726.5572160188201],
      [-10, -53.23128515051248],
      [-2.0001, -3.7834216596639294],
      [-1.9999, -3.782947016557345],
      [-1, -1.8410216450092634],
      [0, -Math.LN2],
      [2, -0.023012909328963476],
      [5, -2.8665161296376294e-7],
    ];
    for (const [z, value] of logs) list.relative(1e-13, { [`log Φ(${z})`]: [value, logNormalCdf(z)] });
    // log Φ(z) = −z²/2 − log(|z| √2π) + log(1 − 1/z² + …)
    const far = -0.5e16 - Math.log(1e8) - 0.5 * Math.log(2 * Math.PI);
    list.relative(1e-15, { 'log Φ(−1e8)': [far, logNormalCdf(-1e8)] });
    list.relative(1e-13, { 'Φ(−10)': [7.61985302416047e-24, normalCdf(-10)] });
    const quantiles: [number, number][] = [
      [1e-300, -37.0470962993612],
      [1e-20, -9.262340089798409],
      [0.1, -1.2815515655446004],
      [0.9, 1.2815515655446004],
      [0.975, 1.959963984540054],
    ];
    for (const [p, z] of quantiles) list.relative(1e-14, { [`quantile of ${p}`]: [z, normalQuantile(p)] });
    return list.figures;
  },
};

/** Figures that follow from a formula or a table, beyond the fitted data sets. */
export const CLOSED_FORMS: readonly ReferenceCase[] = [railCase, normalCase];
