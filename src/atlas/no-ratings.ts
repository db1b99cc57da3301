import type { Ratings } from '../ratings/ratings.ts';

/** Ratings that say nothing, for who needs an atlas of records and ground alone. */
export const NO_RATINGS: Ratings = {
  bags: [],
  waterLevels: [],
  framing: [],
  expectedBags: [],
  framingMakeUp: [],
  featureTemperatures: [],
  fishSizes: [],
  choices: [],
  besides: [],
  backtest: null,
  leftOut: [],
  withoutDnw: null,
  dnwLesson: { mechanism: null, why: 'none-weighed' },
  fits: [],
  notes: [],
};
