import { fitLatentModel } from '../../../src/ratings/engine/fit-latent-model.ts';
import efronMorris from '../data/efron-morris.json' with { type: 'json' };
import longley from '../data/longley.json' with { type: 'json' };
import norris from '../data/norris.json' with { type: 'json' };
import sirstv from '../data/sirstv.json' with { type: 'json' };
import { FigureList, type ReferenceCase } from './figure.ts';
import { exactly, factor, intercept, regressor, TIGHT } from './stated-models.ts';

const norrisCase: ReferenceCase = {
  name: 'NIST Norris',
  source: norris.source,
  figures() {
    const { data, expected } = norris;
    const fit = fitLatentModel(
      { observations: exactly(data.y), fixed: [intercept(data.y.length), regressor('x', data.x)], terms: [] },
      { tolerance: TIGHT },
    );
    return new FigureList(this.name).relative(1e-9, {
      B0: [expected.b0, fit.fixed.intercept!.value],
      B1: [expected.b1, fit.fixed.x!.value],
      'sd of B0': [expected.se_b0, fit.fixed.intercept!.sd],
      'sd of B1': [expected.se_b1, fit.fixed.x!.sd],
      'residual sd': [expected.residual_sd, fit.residualSd],
    }).figures;
  },
};

const longleyCase: ReferenceCase = {
  name: 'NIST Longley',
  source: longley.source,
  figures() {
    const { y, ...columns } = longley.data;
    const fixed = [intercept(y.length), ...Object.entries(columns).map(([name, values]) => regressor(name, values))];
    const fit = fitLatentModel({ observations: exactly(y), fixed, terms: [] }, { tolerance: TIGHT });
    const list = new FigureList(this.name);
    for (const [name, value] of Object.entries(longley.expected.coefficients)) {
      const se = longley.expected.se[name as keyof typeof longley.expected.se];
      list.relative(1e-7, { [name]: [value, fit.fixed[name]!.value], [`sd of ${name}`]: [se, fit.fixed[name]!.sd] });
    }
    return list.relative(1e-7, { 'residual sd': [longley.expected.residual_sd, fit.residualSd] }).figures;
  },
};

const sirstvCase: ReferenceCase = {
  name: 'NIST SiRstv, one-way with a large offset',
  source: `${sirstv.source}; the REML variances follow from the certified mean squares`,
  figures() {
    const { data, expected } = sirstv;
    const fit = fitLatentModel(
      {
        observations: exactly(data.resistance),
        fixed: [intercept(data.resistance.length)],
        terms: [factor('instrument', data.instrument)],
      },
      { tolerance: TIGHT },
    );
    const perInstrument = data.resistance.length / (expected.df_between + 1);
    const within = fit.residualSd ** 2;
    const between = within + perInstrument * fit.sd.instrument! ** 2;
    return new FigureList(this.name)
      .relative(1e-5, {
        'variance, instrument': [expected.reml.var_instrument, fit.sd.instrument! ** 2],
        'variance, residual': [expected.reml.var_residual, within],
      })
      .relative(1e-8, {
        mean: [expected.reml.mean, fit.fixed.intercept!.value],
        'mean square within': [expected.ms_within, within],
        'mean square between': [expected.ms_between, between],
        F: [expected.f, between / within],
      })
      .absolute(1e-6, { 'REML criterion': [expected.reml.reml_criterion, -2 * fit.logMarginal] }).figures;
  },
};

const efronMorrisCase: ReferenceCase = {
  name: 'Efron and Morris, shrinkage with known sampling variance',
  source: efronMorris.source,
  figures() {
    const { data, expected } = efronMorris;
    // The angle transform has unit variance: the residual sd is held at 1.
    const x = data.hits.map((hits, i) => Math.sqrt(data.at_bats[i]!) * Math.asin((2 * hits) / data.at_bats[i]! - 1));
    const model = {
      observations: exactly(x),
      fixed: [intercept(x.length)],
      terms: [
        factor(
          'player',
          x.map((_, i) => i),
        ),
      ],
    };
    const fit = fitLatentModel(model, { tolerance: TIGHT, hold: { residualSd: 1 } });
    const likely = fitLatentModel(model, { tolerance: TIGHT, hold: { residualSd: 1 }, fixedEffects: 'maximised' });
    const estimates = (of: typeof fit) => of.effects('player').map((effect) => of.fixed.intercept!.value + effect);
    // James and Stein's factor, held against the paper: the variance at which the model shrinks by 1 − 15/S.
    const factorOf = expected.js_factor;
    const shrunk = fitLatentModel(model, {
      hold: { residualSd: 1, sd: { player: Math.sqrt(factorOf / (1 - factorOf)) } },
    });
    const squaredError = estimates(shrunk).reduce((sum, value, i) => sum + (value - expected.theta[i]!) ** 2, 0);
    return new FigureList(this.name)
      .relative(1e-7, {
        'REML variance of players': [expected.A_reml, fit.sd.player! ** 2],
        'ML variance of players': [expected.A_ml, likely.sd.player! ** 2],
      })
      .worst('restricted empirical Bayes estimates', 1e-8, expected.eb_reml, estimates(fit))
      .worst('empirical Bayes estimates by ML', 1e-8, expected.eb_ml, estimates(likely))
      .worst('James–Stein estimates', 1e-9, expected.js, estimates(shrunk))
      .relative(1e-9, { 'squared error': [expected.sse_js, squaredError] })
      .relative(0.01, { 'squared error, published (from memory)': [expected.published.sse_js, squaredError] }).figures;
  },
};

/** Certified regressions and analyses of variance, and shrinkage with a known variance. */
export const REGRESSIONS: readonly ReferenceCase[] = [norrisCase, longleyCase, sirstvCase, efronMorrisCase];
