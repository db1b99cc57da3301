import { fitLatentModel } from '../../../src/ratings/engine/fit-latent-model.ts';
import type { LatentModel } from '../../../src/ratings/engine/latent-model.ts';
import affairs from '../data/affairs-tobit.json' with { type: 'json' };
import cars from '../data/cars-interval.json' with { type: 'json' };
import crossed from '../data/censored-crossed.json' with { type: 'json' };
import mixed from '../data/censored-mixed-one-factor.json' with { type: 'json' };
import oneFactor from '../data/censored-one-factor.json' with { type: 'json' };
import threeCrossed from '../data/censored-three-crossed.json' with { type: 'json' };
import tobin from '../data/tobin.json' with { type: 'json' };
import { FigureList, type ReferenceCase } from './figure.ts';
import { eachOf, factor, intercept, regressor, TIGHT, within } from './stated-models.ts';

const ml = (model: LatentModel) => fitLatentModel(model, { tolerance: TIGHT, fixedEffects: 'maximised' });
const restricted = (model: LatentModel) => fitLatentModel(model, { tolerance: TIGHT });

/** Log marginal likelihood at stated parameters, β held (`maximised`) or integrated. */
function at(
  model: LatentModel,
  sd: Readonly<Record<string, number>>,
  residualSd: number,
  fixed?: Readonly<Record<string, number>>,
): number {
  if (fixed === undefined) return fitLatentModel(model, { hold: { sd, residualSd } }).logMarginal;
  return fitLatentModel(model, { fixedEffects: 'maximised', hold: { sd, residualSd, fixed } }).logMarginal;
}

const tobinCase: ReferenceCase = {
  name: 'Tobin, left-censored regression',
  source: tobin.source,
  figures() {
    const { data, expected } = tobin;
    const model: LatentModel = {
      observations: within(
        data.durable.map((value, i) => (data.censored[i] ? null : value)),
        data.durable.map((value, i) => (data.censored[i] ? data.limit : value)),
      ),
      fixed: [intercept(data.age.length), regressor('age', data.age), regressor('quant', data.quant)],
      terms: [],
    };
    const fit = ml(model);
    const alone = ml({ ...model, fixed: [intercept(data.age.length)] });
    const list = new FigureList(this.name);
    list.relative(1e-5, {
      intercept: [expected.intercept, fit.fixed.intercept!.value],
      age: [expected.age, fit.fixed.age!.value],
      quant: [expected.quant, fit.fixed.quant!.value],
      scale: [expected.scale, fit.residualSd],
    });
    list.relative(1e-5, {
      'SE of intercept': [expected.se.intercept, fit.fixed.intercept!.sd],
      'SE of age': [expected.se.age, fit.fixed.age!.sd],
      'SE of quant': [expected.se.quant, fit.fixed.quant!.sd],
      'SE of log scale': [expected.se.log_scale, fit.logSdError.residual],
    });
    list.absolute(1e-7, {
      'log likelihood': [expected.log_likelihood, fit.logMarginal],
      'log likelihood, intercept only': [expected.log_likelihood_intercept_only, alone.logMarginal],
    });
    for (const { scale, log_likelihood, ...fixed } of expected.log_likelihood_at) {
      list.absolute(1e-9, { [`log likelihood at scale ${scale}`]: [log_likelihood, at(model, {}, scale, fixed)] });
    }
    return list.figures;
  },
};

/** Limits far from the data's own scale, and fixed effects that must travel far: the search may not cap their steps. */
const affairsCase: ReferenceCase = {
  name: 'Fair’s affairs, censored at one limit and at two',
  source: affairs.source,
  figures() {
    const list = new FigureList(this.name);
    for (const [limits, { upper, maximised, integrated }] of Object.entries(affairs.expected)) {
      const model = affairsModel(upper);
      const byMaximum = ml(model);
      const byRestricted = restricted(model);
      list.absolute(1e-6, {
        [`${limits}: log likelihood`]: [maximised.logLikelihood, byMaximum.logMarginal],
        [`${limits}: restricted log likelihood`]: [integrated.logLikelihood, byRestricted.logMarginal],
      });
      list.relative(1e-5, {
        [`${limits}: scale`]: [maximised.scale, byMaximum.residualSd],
        [`${limits}: SE of log scale`]: [maximised.logScaleSd, byMaximum.logSdError.residual],
        [`${limits}: restricted scale`]: [integrated.scale, byRestricted.residualSd],
      });
      for (const [fit, { fixed }, how] of [
        [byMaximum, maximised, 'maximised'],
        [byRestricted, integrated, 'integrated'],
      ] as const) {
        for (const [name, { value, sd }] of Object.entries(fixed)) {
          list.relative(1e-5, {
            [`${limits}: ${name}, ${how}`]: [value, fit.fixed[name]!.value],
            [`${limits}: SE of ${name}, ${how}`]: [sd, fit.fixed[name]!.sd],
          });
        }
      }
    }
    return list.figures;
  },
};

function affairsModel(limit: number | null): LatentModel {
  const { affairs: count, ...regressors } = affairs.data;
  return {
    observations: within(
      count.map((value) => (value === 0 ? null : Math.min(value, limit ?? value))),
      count.map((value) => (limit !== null && value >= limit ? null : value)),
    ),
    fixed: [intercept(count.length), ...Object.entries(regressors).map(([name, values]) => regressor(name, values))],
    terms: [],
  };
}

const carsCase: ReferenceCase = {
  name: 'cars, exact, left-, right- and interval-censored',
  source: cars.source,
  figures() {
    const { data, expected } = cars;
    const model: LatentModel = {
      observations: within(data.lo, data.hi),
      fixed: [intercept(data.speed.length), regressor('speed', data.speed)],
      terms: [],
    };
    const fit = ml(model);
    const list = new FigureList(this.name);
    list.relative(1e-5, {
      intercept: [expected.intercept, fit.fixed.intercept!.value],
      speed: [expected.speed, fit.fixed.speed!.value],
      scale: [expected.scale, fit.residualSd],
      'SE of intercept': [expected.se.intercept, fit.fixed.intercept!.sd],
      'SE of speed': [expected.se.speed, fit.fixed.speed!.sd],
      'SE of log scale': [expected.se.log_scale, fit.logSdError.residual],
    });
    list.absolute(1e-7, { 'log likelihood': [expected.log_likelihood, fit.logMarginal] });
    for (const { scale, log_likelihood, ...fixed } of expected.log_likelihood_at) {
      list.absolute(1e-9, { [`log likelihood at scale ${scale}`]: [log_likelihood, at(model, {}, scale, fixed)] });
    }
    return list.figures;
  },
};

function oneFactorCase(
  name: string,
  { source, data, expected, tolerance }: typeof oneFactor | typeof mixed,
): ReferenceCase {
  return {
    name,
    source: `${source}; expected values by adaptive Gauss–Hermite quadrature and by Laplace's approximation in R`,
    figures() {
      const group = factor('u', data.group);
      const model: LatentModel = {
        observations: within(data.lo, data.hi),
        fixed: [intercept(data.x.length), regressor('x', data.x)],
        terms: [group],
      };
      const list = new FigureList(name);
      const exactTolerance = tolerance.exact_log_likelihood_from_laplace_engine.abs;
      expected.at_stated_points.forEach(({ intercept: b0, x, sd_u, sd_e, ...there }, k) => {
        const held = at(model, { u: sd_u }, sd_e, { intercept: b0, x });
        const integrated = at(model, { u: sd_u }, sd_e);
        list.absolute(1e-6, {
          [`point ${k + 1}: Laplace log likelihood`]: [there.log_likelihood_laplace, held],
          [`point ${k + 1}: restricted Laplace`]: [there.restricted_laplace, integrated],
        });
        list.absolute(exactTolerance, {
          [`point ${k + 1}: exact log likelihood`]: [there.log_likelihood_exact, held],
        });
      });
      const likely = ml(model);
      const rest = restricted(model);
      list.relative(1e-4, {
        'ML intercept': [expected.ml_laplace.intercept, likely.fixed.intercept!.value],
        'ML x': [expected.ml_laplace.x, likely.fixed.x!.value],
        'ML sd of effects': [expected.ml_laplace.sd_u, likely.sd.u!],
        'ML residual sd': [expected.ml_laplace.sd_e, likely.residualSd],
        'restricted sd of effects': [expected.restricted_laplace.sd_u, rest.sd.u!],
        'restricted residual sd': [expected.restricted_laplace.sd_e, rest.residualSd],
        'restricted mode, intercept': [expected.restricted_laplace.mode_intercept, rest.fixed.intercept!.value],
        'restricted mode, x': [expected.restricted_laplace.mode_x, rest.fixed.x!.value],
      });
      list.relative(tolerance.exact_estimates_from_laplace_engine.rel, {
        'ML sd of effects, exact': [expected.ml_exact.sd_u, likely.sd.u!],
        'ML residual sd, exact': [expected.ml_exact.sd_e, likely.residualSd],
      });
      list.absolute(1e-6, {
        'ML log likelihood': [expected.ml_laplace.log_likelihood, likely.logMarginal],
        'restricted log likelihood': [expected.restricted_laplace.log_likelihood, rest.logMarginal],
      });
      const { sd_u, sd_e, intercept: b0, x } = expected.ml_exact;
      const there = fitLatentModel(model, {
        fixedEffects: 'maximised',
        hold: { sd: { u: sd_u }, residualSd: sd_e, fixed: { intercept: b0, x } },
      }).posterior(eachOf(group));
      list.worst('modes', 1e-6, expected.at_ml_exact.mode_u, there.mean);
      list.worst('sds', 1e-6, expected.at_ml_exact.laplace_sd_u, there.sd);
      return list.figures;
    },
  };
}

const crossedCase: ReferenceCase = {
  name: 'left-censored, two crossed factors',
  source: `${crossed.source}; exact values by nested quadrature in R`,
  figures() {
    const { data, expected, tolerance } = crossed;
    const peg = factor('peg', data.peg);
    const event = factor('event', data.event);
    const model: LatentModel = {
      observations: within(data.lo, data.hi),
      fixed: [intercept(data.lo.length)],
      terms: [peg, event],
    };
    const list = new FigureList(this.name);
    expected.at_stated_points.forEach((point, k) => {
      const held = at(model, { peg: point.sd_peg, event: point.sd_event }, point.sd_e, { intercept: point.intercept });
      list.absolute(1e-6, { [`point ${k + 1}: Laplace log likelihood`]: [point.log_likelihood_laplace, held] });
      list.absolute(tolerance.exact_log_likelihood_from_laplace_engine.abs, {
        [`point ${k + 1}: exact log likelihood`]: [point.log_likelihood_exact, held],
      });
    });
    const likely = ml(model);
    const { ml_laplace, ml_exact } = expected;
    list.relative(1e-4, {
      'ML intercept': [ml_laplace.intercept, likely.fixed.intercept!.value],
      'ML sd, peg': [ml_laplace.sd_peg, likely.sd.peg!],
      'ML sd, event': [ml_laplace.sd_event, likely.sd.event!],
      'ML residual sd': [ml_laplace.sd_e, likely.residualSd],
    });
    list.relative(tolerance.exact_estimates_from_laplace_engine.rel, {
      'ML sd, peg, exact': [ml_exact.sd_peg, likely.sd.peg!],
      'ML sd, event, exact': [ml_exact.sd_event, likely.sd.event!],
      'ML residual sd, exact': [ml_exact.sd_e, likely.residualSd],
    });
    list.absolute(1e-6, { 'ML log likelihood': [ml_laplace.log_likelihood, likely.logMarginal] });
    const there = fitLatentModel(model, {
      fixedEffects: 'maximised',
      hold: {
        sd: { peg: ml_exact.sd_peg, event: ml_exact.sd_event },
        residualSd: ml_exact.sd_e,
        fixed: { intercept: ml_exact.intercept },
      },
    });
    const ofPeg = there.posterior(eachOf(peg));
    const ofEvent = there.posterior(eachOf(event));
    list.worst('peg modes', 1e-6, expected.at_ml_exact.mode_peg, ofPeg.mean);
    list.worst('event modes', 1e-6, expected.at_ml_exact.mode_event, ofEvent.mean);
    list.worst('peg sds', 1e-6, expected.at_ml_exact.laplace_sd_peg, ofPeg.sd);
    list.worst('event sds', 1e-6, expected.at_ml_exact.laplace_sd_event, ofEvent.sd);
    return list.figures;
  },
};

const threeCrossedCase: ReferenceCase = {
  name: 'left-censored, peg, angler and event crossed',
  source: `${threeCrossed.source}; expected values by Laplace's approximation in R and in TMB 1.9.2`,
  figures() {
    const { data, expected } = threeCrossed;
    const peg = factor('peg', data.peg);
    const angler = factor('angler', data.angler);
    const event = factor('event', data.event);
    const model: LatentModel = {
      observations: within(data.lo, data.hi),
      fixed: [intercept(data.x.length), regressor('x', data.x)],
      terms: [peg, angler, event],
    };
    const list = new FigureList(this.name);
    expected.at_stated_points.forEach((point, k) => {
      const sd = { peg: point.sd_peg, angler: point.sd_angler, event: point.sd_event };
      list.absolute(1e-6, {
        [`point ${k + 1}: Laplace log likelihood`]: [
          point.log_likelihood_laplace,
          at(model, sd, point.sd_e, { intercept: point.intercept, x: point.x }),
        ],
        [`point ${k + 1}: restricted Laplace`]: [point.restricted_laplace, at(model, sd, point.sd_e)],
      });
    });
    const likely = ml(model);
    const rest = restricted(model);
    const { ml_laplace, restricted_laplace } = expected;
    list.relative(1e-4, {
      'ML intercept': [ml_laplace.intercept, likely.fixed.intercept!.value],
      'ML x': [ml_laplace.x, likely.fixed.x!.value],
      'ML sd, peg': [ml_laplace.sd_peg, likely.sd.peg!],
      'ML sd, angler': [ml_laplace.sd_angler, likely.sd.angler!],
      'ML sd, event': [ml_laplace.sd_event, likely.sd.event!],
      'ML residual sd': [ml_laplace.sd_e, likely.residualSd],
      'restricted sd, peg': [restricted_laplace.sd_peg, rest.sd.peg!],
      'restricted sd, angler': [restricted_laplace.sd_angler, rest.sd.angler!],
      'restricted sd, event': [restricted_laplace.sd_event, rest.sd.event!],
      'restricted residual sd': [restricted_laplace.sd_e, rest.residualSd],
      'restricted sd of intercept': [restricted_laplace.laplace_sd_intercept, rest.fixed.intercept!.sd],
      'restricted sd of x': [restricted_laplace.laplace_sd_x, rest.fixed.x!.sd],
    });
    list.absolute(1e-6, {
      'ML log likelihood': [ml_laplace.log_likelihood, likely.logMarginal],
      'restricted log likelihood': [restricted_laplace.log_likelihood, rest.logMarginal],
    });
    for (const [name, term] of Object.entries({ peg, angler, event })) {
      const { mean, sd } = rest.posterior(eachOf(term));
      const key = name as 'peg' | 'angler' | 'event';
      list.worst(`${name} modes`, 1e-4, restricted_laplace.modes[key], mean);
      list.worst(`${name} sds`, 1e-4, restricted_laplace.laplace_sds[key], sd);
    }
    return list.figures;
  },
};

/** Censored rows: against survreg without random effects, and with them against quadrature and other Laplace engines. */
export const CENSORED_MODELS: readonly ReferenceCase[] = [
  tobinCase,
  affairsCase,
  carsCase,
  oneFactorCase('left-censored, one factor', oneFactor),
  oneFactorCase('exact, left- and interval-censored, one factor', mixed),
  crossedCase,
  threeCrossedCase,
];
