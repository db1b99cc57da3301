import type { ModelSession } from './sessions-in-model.ts';

/** Sessions of each full-list event of the year in which at least two weighed. */
export function testedEvents(sessions: readonly ModelSession[], yearFrom: string): ModelSession[][] {
  const recent = sessions.filter(({ event }) => event.day > yearFrom && event.listing === 'full');
  return [...Map.groupBy(recent, ({ event }) => event.id).values()].filter(
    (ofEvent) => ofEvent.filter(({ isCensored }) => !isCensored).length >= 2,
  );
}
