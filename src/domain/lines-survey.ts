import { type Day, formatDay } from './day.ts';

/** Who looked for overhead lines, when and from what: without it nobody can tell a bare map from a bare sky. */
export interface LinesSurvey {
  readonly on: Day;
  /** A role, never a name. */
  readonly by: string;
  /** "walked, with the network operator's plan of 2026". */
  readonly how: string;
}

/** The survey that holds for a water: its own, or the venue's. */
export function linesSurveyOf(
  water: { readonly linesSurveyed?: LinesSurvey },
  settings: { readonly linesSurveyed?: LinesSurvey },
): LinesSurvey | null {
  return water.linesSurveyed ?? settings.linesSurveyed ?? null;
}

/** "Overhead lines surveyed 3 Mar 2026 by the bailiff: …", or that nobody said so: silence is not safety. */
export function linesSurveyWords(survey: LinesSurvey | null): string {
  if (survey === null) {
    return 'The club has not said when anyone looked for overhead lines here, who did, or from what. Look up before you set up.';
  }
  const { on, by, how } = survey;
  return `Overhead lines surveyed ${formatDay(on)} by role: ${by}; how: ${how.replace(/\.$/, '')}. Look up all the same.`;
}

/** What a map without an overhead line says of it. */
export const NO_LINE_ON_MAP = 'No line is on the club’s map.';
