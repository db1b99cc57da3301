import type { LatentFit, LinearCombination } from './engine/latent-model.ts';
import { evidenceOf } from './evidence.ts';
import { isSettled } from './fit-report.ts';
import { interval80 } from './interval.ts';
import { priorSds } from './prior-sd.ts';
import type { RatingModel } from './rating-model.ts';
import type { Evidence } from './ratings.ts';

/** A worth on the log scale, with what the guide says of its doubt. */
export interface WorthEstimate {
  readonly logWorth: number;
  readonly sd: number;
  /** What the doubt was before any session was seen. */
  readonly priorSd: number;
  /** Multiples of par. */
  readonly low80: number;
  readonly high80: number;
  readonly sessions: number;
  readonly evidence: Evidence;
}

/** A model of the ratings, fitted. */
export interface FittedModel {
  readonly model: RatingModel;
  readonly fit: LatentFit;
}

/** A worth to be told, and the number of sessions behind it. */
export interface AskedWorth {
  readonly combination: LinearCombination;
  readonly sessions: number;
}

/** A table that a fit can tell: what to ask of it, and how the answers read. */
export interface Question<Row> {
  readonly asked: readonly AskedWorth[];
  readonly read: (answers: readonly WorthEstimate[], fit: LatentFit) => Row[];
}

/** Rows of each of several questions. */
type Rows<Questions extends readonly Question<unknown>[]> = {
  readonly [K in keyof Questions]: Questions[K] extends Question<infer Row> ? Row[] : never;
};

/**
 * Asks several tables of one fit at once. Averaging over the variances of a large model means to work out its covariances
 * many times over, so all that is wanted of a fit is asked together.
 */
export function answers<Questions extends readonly Question<unknown>[]>(
  fitted: FittedModel,
  questions: Questions,
): Rows<Questions> {
  const all = worthsOf(
    fitted,
    questions.flatMap(({ asked }) => asked),
  );
  let next = 0;
  return questions.map(({ asked, read }) => {
    const own = all.slice(next, next + asked.length);
    next += asked.length;
    return read(own, fitted.fit);
  }) as Rows<Questions>;
}

/** Posterior worth, in the order asked. */
function worthsOf({ model, fit }: FittedModel, asked: readonly AskedWorth[]): WorthEstimate[] {
  const { mean, sd } = fit.posterior(asked.map(({ combination }) => combination));
  const priorSd = priorSds(model.latent, fit);
  return asked.map(({ combination, sessions }, i) => {
    const before = priorSd(combination);
    return {
      logWorth: mean[i]!,
      sd: sd[i]!,
      priorSd: before,
      ...interval80(mean[i]!, sd[i]!),
      sessions,
      evidence: isSettled(fit) ? evidenceOf(sd[i]!, before) : 'thin',
    };
  });
}
