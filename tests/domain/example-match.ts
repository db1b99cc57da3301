import { type Match, USUAL_SCORING } from '../../src/domain/match.ts';

/** A planned match of one section on the example water, nothing drawn yet. */
export function exampleMatch(over: Partial<Match> = {}): Match {
  return {
    id: '2026-12-06-any',
    name: 'Any',
    day: '2026-12-06',
    waters: ['pit'],
    entries: 2,
    sections: 1,
    apartMetres: 0,
    stepFree: 0,
    ends: { rule: 'any', features: [] },
    leaveOut: [],
    places: 1,
    scoring: USUAL_SCORING,
    pot: [],
    namesAgreed: false,
    status: 'planned',
    plan: [],
    kept: [],
    markdown: '',
    ...over,
  };
}
