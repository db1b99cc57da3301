import { type Day, MONTHS, type Month } from '../domain/day.ts';
import type { Peg } from '../domain/peg.ts';
import { formatDistance } from '../domain/place-words.ts';
import type { PegSurvey } from '../ground/survey.ts';
import { monthWords } from '../words/day-words.ts';
import { type Say, sayIn } from '../words/say.ts';
import type { Atlas } from './atlas.ts';
import { surveyOfWater } from './atlas.ts';
import type { SafetyEntry } from './peg-safety.ts';
import type { SessionCounts } from './peg-sessions.ts';

/** One thing that is not known at a peg. */
export interface Unknown {
  readonly words: string;
  /** Of a check: it is not known from the day after. */
  readonly dueOn: Day | null;
}

/**
 * What nobody knows of a peg, so that silence is never read as good news: months without a session, lines not plumbed, what
 * the record leaves out, checks never made and checks that are overdue.
 */
export function pegUnknowns(
  atlas: Atlas,
  peg: Peg,
  survey: PegSurvey,
  sessions: SessionCounts,
  safety: readonly SafetyEntry[],
): readonly Unknown[] {
  const say = sayIn(atlas.venue.settings.language);
  const always = (words: string | null): readonly Unknown[] => (words === null ? [] : [{ words, dueOn: null }]);
  const when = (isUnknown: boolean, words: string) => always(isUnknown ? words : null);
  const { walks } = survey;
  return [
    ...always(sessionsMissing(sessions, say)),
    ...always(notPlumbed(atlas, survey, say)),
    ...when(surveyOfWater(atlas, peg.water).level === null, say('unknown.level')),
    ...when(peg.platform === undefined, say('unknown.platform')),
    ...when(peg.bank === undefined, say('unknown.bank')),
    ...when(peg.clearance?.clearWidthMetres === undefined, say('unknown.width')),
    ...when(walks.length === 0 || walks.every(({ stepFree }) => stepFree === null), say('unknown.steps')),
    ...when(survey.nearestThrowLine === null, say('unknown.throwLine')),
    ...checksMissing(safety, say),
  ];
}

/** What was never looked at, and, from the day the first check falls due, that the hazards may have changed. */
function checksMissing(safety: readonly SafetyEntry[], say: Say): readonly Unknown[] {
  const checks = safety.flatMap(({ title, check }) => (check === null ? [] : [{ title, dueOn: check.dueOn }]));
  const never = checks.filter(({ dueOn }) => dueOn === null).map(({ title }) => title);
  const first = checks.flatMap(({ dueOn }) => dueOn ?? []).sort()[0];
  return [
    ...(never.length === 0 ? [] : [{ words: say('unknown.neverChecked', { what: never.join('; ') }), dueOn: null }]),
    ...(first === undefined ? [] : [{ words: say('unknown.overdue'), dueOn: first }]),
  ];
}

/** Beyond this many months without a session it is shorter to name those with one. */
const MANY_MONTHS = 8;

function sessionsMissing({ byMonth, total }: SessionCounts, say: Say): string | null {
  if (total === 0) return say('unknown.noSession');
  const without = MONTHS.filter((month) => byMonth[month] === 0);
  if (without.length === 0) return null;
  if (without.length <= MANY_MONTHS) return say('unknown.noSessionIn', { months: spans(without, say) });
  return say('unknown.sessionsOnlyIn', {
    months: spans(
      MONTHS.filter((month) => byMonth[month] > 0),
      say,
    ),
  });
}

/** "January, May to August". */
function spans(months: readonly Month[], say: Say): string {
  const groups: Month[][] = [];
  for (const month of months) {
    const last = groups.at(-1);
    if (last?.at(-1) === month - 1) last.push(month);
    else groups.push([month]);
  }
  return groups
    .map((group) => {
      const [first, last] = [monthWords(group[0]!, say), monthWords(group.at(-1)!, say)];
      if (group.length === 1) return first;
      return group.length === 2 ? `${first}, ${last}` : say('unknown.span', { first, last });
    })
    .join(', ');
}

/** Lines over water that may be fished and were never plumbed: past the last one that was, or by name. */
function notPlumbed({ venue }: Atlas, { lineDepths }: PegSurvey, say: Say): string | null {
  const fished = lineDepths.filter(({ permitted, why }) => permitted && (why === undefined || why === 'unplumbed'));
  const blind = fished.filter(({ depthMetres }) => depthMetres === null);
  if (blind.length === 0) return null;
  const known = fished.filter(({ depthMetres }) => depthMetres !== null);
  const last = known.at(-1);
  if (last === undefined) return say('unknown.notPlumbed');
  if (blind.every(({ distanceMetres }) => distanceMetres > last.distanceMetres)) {
    return say('unknown.notPlumbedPast', { distance: formatDistance(last.distanceMetres, venue.settings.units) });
  }
  return say('unknown.notPlumbedAt', { lines: blind.map(({ name }) => name).join(', ') });
}
