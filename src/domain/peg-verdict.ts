import { addDays, type Day } from './day.ts';
import type { PegStatus, PermittedReach } from './peg.ts';

/** A closure notice that speaks of the peg, by its days. */
export interface ClosureDays {
  /** The notice's id, for its place on the notices page. */
  readonly notice: string;
  readonly title: string;
  readonly from: Day;
  /** Last day it holds; open-ended where left out. */
  readonly until?: Day;
  /** First day of the notice that takes its place. */
  readonly replacedFrom?: Day;
}

/** Where the knowledge of an overhead line comes from. */
export type LineSource = 'map' | 'record' | 'measured';

/** An overhead line as it counts for a peg. */
export interface LineFact {
  readonly name: string;
  readonly source: LineSource;
  /** The least distance from the platform and all that is swept from it, allowances taken; null where nobody stated one. */
  readonly metres: number | null;
}

/** Why a hazard closes a peg: its kind is a hard rule, or its score falls into a band that does. */
export type ClosingRule = { readonly rule: 'hard-rule' } | { readonly rule: 'band'; readonly band: string };

/** Somebody of the club decided that a peg stays in the draw in spite of a hazard, and said why. */
export interface KeptOpen {
  readonly on: Day;
  /** A role, never a name. */
  readonly by: string;
  readonly why: string;
}

/** A current hazard that closes a peg, unless somebody decided otherwise. */
export interface ClosingHazard {
  /** A word of `HAZARD_KINDS`. */
  readonly kind: string;
  /** The kind's name: "Blue-green algae scum". */
  readonly name: string;
  readonly place: string;
  readonly foundOn: Day;
  readonly why: ClosingRule;
  readonly keptOpen?: KeptOpen;
}

/**
 * Everything known about a peg that decides whether it may be fished. Plain data without the clock and without the
 * folder, so that a phone works the verdict out again for the day it is read.
 */
export interface PegFacts {
  readonly status: PegStatus;
  readonly since?: Day;
  readonly reason?: string;
  readonly closures?: readonly ClosureDays[];
  readonly standOffMetres: number;
  readonly lines?: readonly LineFact[];
  readonly hazards?: readonly ClosingHazard[];
  /** What the record says of a platform that must not be used. */
  readonly unsafePlatform?: string;
  /** What the record allows less of than the venue. */
  readonly limits?: Partial<PermittedReach>;
}

/** One thing that closes a peg. */
export type ClosedBy =
  | { readonly by: 'status'; readonly since?: Day; readonly reason?: string }
  | { readonly by: 'line'; readonly line: LineFact; readonly standOffMetres: number }
  | { readonly by: 'platform'; readonly condition: string }
  | { readonly by: 'hazard'; readonly hazard: ClosingHazard }
  | {
      readonly by: 'notice';
      readonly notice: string;
      readonly title: string;
      readonly since: Day;
      readonly until?: Day;
    };

/** One thing that keeps a peg open only in part. */
export type PegLimit =
  | { readonly by: 'reach'; readonly reach: Partial<PermittedReach> }
  | { readonly by: 'kept-open'; readonly hazard: ClosingHazard; readonly keptOpen: KeptOpen };

export interface ClosedVerdict {
  readonly state: 'closed';
  /** The first day of what closes it; null where the record does not say. */
  readonly since: Day | null;
  /** The last day it is closed, with all closures that follow on without a gap; null where the end is open. */
  readonly until: Day | null;
  /** All that closes it on that day, what has no end first. */
  readonly causes: readonly [ClosedBy, ...ClosedBy[]];
}

/** Whether a peg may be fished on a day. Every place that names the peg shows this and nothing more open. */
export type PegVerdict =
  | { readonly state: 'open' }
  | { readonly state: 'limited'; readonly limits: readonly [PegLimit, ...PegLimit[]] }
  | ClosedVerdict;

/**
 * The verdict on a peg for one day. Closed by its record, by an overhead line inside the stand-off or of which no
 * distance is known, by a platform that must not be used, by a current hazard that closes, or by a closure notice of
 * that day; else open, within what limits its record sets. What nobody wrote down never opens a peg: a line without a
 * distance counts as inside.
 */
export function pegVerdict(facts: PegFacts, onDay: Day): PegVerdict {
  const [first, ...others] = [...lastingCauses(facts), ...noticesOf(facts, onDay)];
  if (first !== undefined) {
    const causes: ClosedVerdict['causes'] = [first, ...others];
    return { state: 'closed', since: earliest(causes.map(sinceOf)), until: closedUntil(facts, onDay), causes };
  }
  const [limit, ...more] = limitsOf(facts);
  return limit === undefined ? { state: 'open' } : { state: 'limited', limits: [limit, ...more] };
}

/** The verdict for who reads of several days: closed on any of them is closed, by the first such; else as on the first day. */
export function verdictOnDays(facts: PegFacts, days: readonly [Day, ...Day[]]): PegVerdict {
  const verdicts = days.map((day) => pegVerdict(facts, day));
  return verdicts.find(({ state }) => state === 'closed') ?? verdicts[0]!;
}

/** Whether a line counts as inside the stand-off: nearer than it, or of no known distance. */
export function isInsideStandOff({ metres }: Pick<LineFact, 'metres'>, standOffMetres: number): boolean {
  return metres === null || metres < standOffMetres;
}

/** Whether something closes the peg on every day, not a notice for a time. */
export function isClosedForGood(facts: PegFacts): boolean {
  return lastingCauses(facts).length > 0;
}

/** Whether a closure notice gives the peg another verdict on that day or a later one. */
export function changesWithDay(facts: PegFacts, fromDay: Day): boolean {
  if (lastingCauses(facts).length > 0) return false;
  return (facts.closures ?? []).some((closure) => {
    const last = lastDayOf(closure);
    return last === null || last >= fromDay;
  });
}

/** How far from open a verdict is: 0 open, 1 within limits, 2 closed. */
export function verdictRank({ state }: PegVerdict): 0 | 1 | 2 {
  return state === 'closed' ? 2 : state === 'limited' ? 1 : 0;
}

/** What closes a peg whatever the day. */
function lastingCauses(facts: PegFacts): readonly ClosedBy[] {
  const { status, since, reason, standOffMetres, lines = [], hazards = [], unsafePlatform } = facts;
  return [
    ...(status === 'closed'
      ? [
          {
            by: 'status' as const,
            ...(since === undefined ? {} : { since }),
            ...(reason === undefined ? {} : { reason }),
          },
        ]
      : []),
    ...lines
      .filter((line) => isInsideStandOff(line, standOffMetres))
      .map((line) => ({ by: 'line' as const, line, standOffMetres })),
    ...(unsafePlatform === undefined ? [] : [{ by: 'platform' as const, condition: unsafePlatform }]),
    ...hazards.filter(({ keptOpen }) => keptOpen === undefined).map((hazard) => ({ by: 'hazard' as const, hazard })),
  ];
}

function noticesOf({ closures = [] }: PegFacts, onDay: Day): readonly ClosedBy[] {
  return closures
    .filter((closure) => isClosedBy(closure, onDay))
    .map(({ notice, title, from, ...closure }) => {
      const until = lastDayOf(closure);
      return { by: 'notice', notice, title, since: from, ...(until === null ? {} : { until }) };
    });
}

function limitsOf({ limits = {}, hazards = [] }: PegFacts): readonly PegLimit[] {
  return [
    ...(Object.keys(limits).length === 0 ? [] : [{ by: 'reach' as const, reach: limits }]),
    ...hazards.flatMap((hazard) =>
      hazard.keptOpen === undefined ? [] : [{ by: 'kept-open' as const, hazard, keptOpen: hazard.keptOpen }],
    ),
  ];
}

/** Follows the closures day by day of their ends: where one ends and the next has begun, the peg stays closed. */
function closedUntil(facts: PegFacts, onDay: Day): Day | null {
  if (lastingCauses(facts).length > 0) return null;
  let until: Day | null = null;
  let day = onDay;
  for (;;) {
    const live = (facts.closures ?? []).filter((closure) => isClosedBy(closure, day)).map(lastDayOf);
    if (live.includes(null)) return null;
    const [last] = live
      .filter((end) => end !== null)
      .sort()
      .reverse();
    if (last === undefined) return until;
    until = last;
    day = addDays(last, 1);
  }
}

function isClosedBy(closure: Pick<ClosureDays, 'from' | 'until' | 'replacedFrom'>, onDay: Day): boolean {
  const last = lastDayOf(closure);
  return closure.from <= onDay && (last === null || onDay <= last);
}

/** The last day a closure holds: its own, or the day before another notice takes its place. */
function lastDayOf({ until, replacedFrom }: Pick<ClosureDays, 'until' | 'replacedFrom'>): Day | null {
  const replaced = replacedFrom === undefined ? undefined : addDays(replacedFrom, -1);
  return [until, replaced].filter((day) => day !== undefined).sort()[0] ?? null;
}

function sinceOf(cause: ClosedBy): Day | null {
  if (cause.by === 'status' || cause.by === 'notice') return cause.since ?? null;
  return cause.by === 'hazard' ? cause.hazard.foundOn : null;
}

function earliest(days: readonly (Day | null)[]): Day | null {
  return days.filter((day) => day !== null).sort()[0] ?? null;
}
