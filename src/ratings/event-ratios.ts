import type { ModelSession } from './sessions-in-model.ts';

/** A weighed bag beside the middle of its event. */
export interface EventRatio {
  readonly from: ModelSession;
  /** Log of the bag over the event's (geometric) average weighed bag. */
  readonly logRatio: number;
}

/**
 * The raw comparison, without a model: each weighed bag's log less the mean log of the event's weighed bags. DNW, blank
 * and unlisted sessions have no ratio, which is one of the reasons why the ratings do not rest on this.
 */
export function eventRatios(sessions: readonly ModelSession[]): EventRatio[] {
  const weighed = sessions.filter(({ isCensored }) => !isCensored);
  const means = new Map(
    [...Map.groupBy(weighed, ({ event }) => event.id)].map(([id, members]) => [
      id,
      members.reduce((sum, { logKg }) => sum + logKg, 0) / members.length,
    ]),
  );
  return weighed.map((from) => ({ from, logRatio: from.logKg - means.get(from.event.id)! }));
}
