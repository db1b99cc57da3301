import { fitLatentModel } from '../../../src/ratings/engine/fit-latent-model.ts';
import type { LatentFit, LatentModel } from '../../../src/ratings/engine/latent-model.ts';
import dyestuff from '../data/dyestuff.json' with { type: 'json' };
import dyestuff2 from '../data/dyestuff2.json' with { type: 'json' };
import penicillin from '../data/penicillin.json' with { type: 'json' };
import sleepstudy from '../data/sleepstudy.json' with { type: 'json' };
import { FigureList, type ReferenceCase } from './figure.ts';
import { eachOf, exactly, factor, intercept, regressor, slopes, TIGHT } from './stated-models.ts';

const reml = (model: LatentModel) => fitLatentModel(model, { tolerance: TIGHT });
const ml = (model: LatentModel) => fitLatentModel(model, { tolerance: TIGHT, fixedEffects: 'maximised' });
/** Effects' sds with the fixed effects held at their estimates, as lme4's conditional variances are. */
const givenBeta = (model: LatentModel, { sd, residualSd, fixed }: LatentFit) =>
  fitLatentModel(model, {
    fixedEffects: 'maximised',
    hold: {
      sd,
      residualSd,
      fixed: Object.fromEntries(Object.entries(fixed).map(([name, { value }]) => [name, value])),
    },
  });

const dyestuffCase: ReferenceCase = {
  name: 'Dyestuff',
  source: dyestuff.source,
  figures() {
    const { data, expected } = dyestuff;
    const batch = factor('batch', data.batch);
    const model = { observations: exactly(data.yield), fixed: [intercept(data.yield.length)], terms: [batch] };
    const list = new FigureList('Dyestuff');
    const fit = reml(model);
    const likely = ml(model);
    const prediction = fit.posterior(eachOf(batch));
    list.relative(1e-5, {
      'REML variance, batch': [expected.reml.var_batch, fit.sd.batch! ** 2],
      'REML variance, residual': [expected.reml.var_residual, fit.residualSd ** 2],
      'REML SE of intercept': [expected.reml.intercept_se, fit.fixed.intercept!.sd],
      'ML variance, batch': [expected.ml.var_batch, likely.sd.batch! ** 2],
      'ML variance, residual': [expected.ml.var_residual, likely.residualSd ** 2],
      'ML SE of intercept': [expected.ml.intercept_se, likely.fixed.intercept!.sd],
    });
    list.relative(1e-7, { intercept: [expected.reml.intercept, fit.fixed.intercept!.value] });
    list.absolute(1e-6, {
      'REML criterion': [expected.reml.reml_criterion, -2 * fit.logMarginal],
      'ML deviance': [expected.ml.ml_deviance, -2 * likely.logMarginal],
    });
    list.worst('batch modes', 2e-4, expected.reml_modes, prediction.mean);
    list.worst('batch sds of prediction', 2e-4, expected.reml_mode_sd_prediction, prediction.sd);
    const given = givenBeta(model, fit).posterior(eachOf(batch));
    list.worst('batch sds given the intercept', 2e-4, expected.reml_mode_sd_given_beta, given.sd);
    return list.figures;
  },
};

const boundaryCase: ReferenceCase = {
  name: 'Dyestuff2, estimate on the boundary',
  source: dyestuff2.source,
  figures() {
    const { data, expected } = dyestuff2;
    const batch = factor('batch', data.batch);
    const model = { observations: exactly(data.yield), fixed: [intercept(data.yield.length)], terms: [batch] };
    const list = new FigureList(this.name);
    const fit = reml(model);
    const likely = ml(model);
    list.absolute(1e-12, {
      'REML variance, batch': [0, fit.sd.batch! ** 2],
      'ML variance, batch': [0, likely.sd.batch! ** 2],
    });
    list.relative(1e-5, {
      'REML variance, residual': [expected.reml.var_residual, fit.residualSd ** 2],
      'REML SE of intercept': [expected.reml.intercept_se, fit.fixed.intercept!.sd],
      'ML variance, residual': [expected.ml.var_residual, likely.residualSd ** 2],
    });
    list.relative(1e-7, { intercept: [expected.reml.intercept, fit.fixed.intercept!.value] });
    list.absolute(1e-6, {
      'REML criterion': [expected.reml.reml_criterion, -2 * fit.logMarginal],
      'ML deviance': [expected.ml.ml_deviance, -2 * likely.logMarginal],
    });
    list.worst('batch modes', 1e-12, [0, 0, 0, 0, 0, 0], fit.effects('batch'));
    return list.figures;
  },
};

const penicillinCase: ReferenceCase = {
  name: 'Penicillin',
  source: penicillin.source,
  figures() {
    const { data, expected } = penicillin;
    const plate = factor('plate', data.plate);
    const sample = factor('sample', data.sample);
    const model = {
      observations: exactly(data.diameter),
      fixed: [intercept(data.diameter.length)],
      terms: [plate, sample],
    };
    const list = new FigureList('Penicillin');
    const fit = reml(model);
    const likely = ml(model);
    list.relative(1e-5, {
      'REML variance, plate': [expected.reml.var_plate, fit.sd.plate! ** 2],
      'REML variance, sample': [expected.reml.var_sample, fit.sd.sample! ** 2],
      'REML variance, residual': [expected.reml.var_residual, fit.residualSd ** 2],
      'REML SE of intercept': [expected.reml.intercept_se, fit.fixed.intercept!.sd],
      'ML variance, plate': [expected.ml.var_plate, likely.sd.plate! ** 2],
      'ML variance, sample': [expected.ml.var_sample, likely.sd.sample! ** 2],
      'ML variance, residual': [expected.ml.var_residual, likely.residualSd ** 2],
      'ML SE of intercept': [expected.ml.intercept_se, likely.fixed.intercept!.sd],
    });
    list.relative(1e-7, { intercept: [expected.reml.intercept, fit.fixed.intercept!.value] });
    list.absolute(1e-6, {
      'REML criterion': [expected.reml.reml_criterion, -2 * fit.logMarginal],
      'ML deviance': [expected.ml.ml_deviance, -2 * likely.logMarginal],
    });
    const given = givenBeta(model, fit);
    list.worst('plate modes', 2.7e-6, expected.plate_modes, fit.posterior(eachOf(plate)).mean);
    list.worst('plate sds of prediction', 2.7e-6, expected.plate_sd_prediction, fit.posterior(eachOf(plate)).sd);
    list.worst(
      'plate sds given the intercept',
      2.7e-6,
      expected.plate_sd_given_beta,
      given.posterior(eachOf(plate)).sd,
    );
    list.worst('sample modes', 2e-6, expected.sample_modes, fit.posterior(eachOf(sample)).mean);
    list.worst('sample sds of prediction', 8e-6, expected.sample_sd_prediction, fit.posterior(eachOf(sample)).sd);
    list.worst(
      'sample sds given the intercept',
      2e-6,
      expected.sample_sd_given_beta,
      given.posterior(eachOf(sample)).sd,
    );
    return list.figures;
  },
};

const sleepCase: ReferenceCase = {
  name: 'sleepstudy',
  source: sleepstudy.source,
  figures() {
    const { data, expected } = sleepstudy;
    const observations = exactly(data.reaction);
    const fixed = [intercept(data.days.length), regressor('days', data.days)];
    const subject = factor('intercept', data.subject);
    const slope = slopes('slope', data.subject, data.days);
    const list = new FigureList('sleepstudy');

    const only = expected.intercept_only;
    const simple = { observations, fixed, terms: [subject] };
    const fit = reml(simple);
    const likely = ml(simple);
    const both = fit.posterior([
      {
        fixed: [
          { name: 'intercept', weight: 1 },
          { name: 'days', weight: 1 },
        ],
        effects: [],
      },
    ]).sd[0]!;
    const covariance = (both ** 2 - fit.fixed.intercept!.sd ** 2 - fit.fixed.days!.sd ** 2) / 2;
    list.relative(1e-5, {
      'intercepts: REML variance, subject': [only.var_subject, fit.sd.intercept! ** 2],
      'intercepts: REML variance, residual': [only.var_residual, fit.residualSd ** 2],
      'intercepts: SE of intercept': [only.se_intercept, fit.fixed.intercept!.sd],
      'intercepts: SE of days': [only.se_days, fit.fixed.days!.sd],
      'intercepts: covariance of the two': [only.cov_intercept_days, covariance],
      'intercepts: ML variance, subject': [only.ml.var_subject, likely.sd.intercept! ** 2],
      'intercepts: ML variance, residual': [only.ml.var_residual, likely.residualSd ** 2],
    });
    list.relative(1e-7, {
      'intercepts: intercept': [only.intercept, fit.fixed.intercept!.value],
      'intercepts: days': [only.days, fit.fixed.days!.value],
    });
    list.absolute(1e-6, {
      'intercepts: REML criterion': [only.reml_criterion, -2 * fit.logMarginal],
      'intercepts: ML deviance': [only.ml.ml_deviance, -2 * likely.logMarginal],
    });
    list.worst('intercepts: subject modes', 1e-4, only.subject_modes, fit.posterior(eachOf(subject)).mean);
    list.worst('intercepts: sds of prediction', 1e-4, only.subject_sd_prediction, fit.posterior(eachOf(subject)).sd);
    list.worst(
      'intercepts: sds given the fixed effects',
      1e-4,
      only.subject_sd_given_beta,
      givenBeta(simple, fit).posterior(eachOf(subject)).sd,
    );

    const two = expected.uncorrelated;
    const richer = { observations, fixed, terms: [subject, slope] };
    const richFit = reml(richer);
    const richLikely = ml(richer);
    const given = givenBeta(richer, richFit);
    list.relative(1e-5, {
      'slopes: REML variance, intercept': [two.var_intercept, richFit.sd.intercept! ** 2],
      'slopes: REML variance, slope': [two.var_slope, richFit.sd.slope! ** 2],
      'slopes: REML variance, residual': [two.var_residual, richFit.residualSd ** 2],
      'slopes: SE of intercept': [two.se_intercept, richFit.fixed.intercept!.sd],
      'slopes: SE of days': [two.se_days, richFit.fixed.days!.sd],
      'slopes: ML variance, intercept': [two.ml.var_intercept, richLikely.sd.intercept! ** 2],
      'slopes: ML variance, slope': [two.ml.var_slope, richLikely.sd.slope! ** 2],
      'slopes: ML variance, residual': [two.ml.var_residual, richLikely.residualSd ** 2],
    });
    list.relative(1e-7, {
      'slopes: intercept': [two.intercept, richFit.fixed.intercept!.value],
      'slopes: days': [two.days, richFit.fixed.days!.value],
    });
    list.absolute(1e-6, {
      'slopes: REML criterion': [two.reml_criterion, -2 * richFit.logMarginal],
      'slopes: ML deviance': [two.ml.ml_deviance, -2 * richLikely.logMarginal],
    });
    list.worst('slopes: intercept modes', 1e-4, two.intercept_modes, richFit.posterior(eachOf(subject)).mean);
    list.worst(
      'slopes: intercept sds of prediction',
      1e-4,
      two.intercept_sd_prediction,
      richFit.posterior(eachOf(subject)).sd,
    );
    list.worst('slopes: intercept sds given β', 1e-4, two.intercept_sd_given_beta, given.posterior(eachOf(subject)).sd);
    list.worst('slopes: slope modes', 2e-5, two.slope_modes, richFit.posterior(eachOf(slope)).mean);
    list.worst('slopes: slope sds of prediction', 2e-5, two.slope_sd_prediction, richFit.posterior(eachOf(slope)).sd);
    list.worst('slopes: slope sds given β', 2e-5, two.slope_sd_given_beta, given.posterior(eachOf(slope)).sd);
    return list.figures;
  },
};

/** Published mixed-model fits: variances, criterion, fixed effects, modes and their sds, REML and ML. */
export const MIXED_MODELS: readonly ReferenceCase[] = [dyestuffCase, boundaryCase, penicillinCase, sleepCase];
