import { type MeasuredClearance, measuredOf } from '../domain/clearance-measures.ts';
import type { Day } from '../domain/day.ts';
import { onceFor } from '../domain/once-for.ts';
import { type PegKey, pegKey } from '../domain/peg.ts';
import type { RoundEntry } from '../domain/round.ts';
import type { Venue } from '../domain/venue.ts';
import { type CutForecast, forecastCuts } from '../ratings/cuts/forecast-cuts.ts';

/** What was measured or done to a peg's clearance on one round. */
export interface ClearanceVisit extends MeasuredClearance {
  readonly day: Day;
  readonly cut: boolean;
  readonly snagRemoved: boolean;
}

/** A peg's clearance through time, latest first, with the next cut where the cuts so far allow an estimate. */
export interface PegClearance {
  readonly visits: readonly ClearanceVisit[];
  readonly forecast: CutForecast | null;
}

const ABOUT_CLEARANCE: readonly RoundEntry['entry'][] = ['clearance', 'cut', 'snag-removed'];

/** The clearance history of every peg that a round has looked at, by peg key. Worked out once a build. */
export const clearanceByPeg = onceFor((venue: Venue): ReadonlyMap<PegKey, PegClearance> => {
  const visits = new Map<PegKey, ClearanceVisit[]>();
  const rounds = [...venue.rounds].sort((a, b) => a.day.localeCompare(b.day) || a.ref.localeCompare(b.ref));
  for (const round of rounds) {
    for (const [key, entries] of entriesByPeg(round.entries)) {
      const list = visits.get(key) ?? [];
      list.push(visitOf(entries[0]?.day ?? round.day, entries));
      visits.set(key, list);
    }
  }
  const { guideDay, nestingMonths } = venue.settings;
  const banks = [...visits].map(([peg, list]) => ({ peg, visits: list }));
  const forecasts = new Map(forecastCuts(banks, guideDay, nestingMonths).map((forecast) => [forecast.peg, forecast]));
  return new Map(
    [...visits].map(([key, list]) => [key, { visits: [...list].reverse(), forecast: forecasts.get(key) ?? null }]),
  );
});

function entriesByPeg(entries: readonly RoundEntry[]): ReadonlyMap<PegKey, readonly RoundEntry[]> {
  const groups = new Map<PegKey, RoundEntry[]>();
  for (const entry of entries) {
    if (entry.peg === undefined || !ABOUT_CLEARANCE.includes(entry.entry)) continue;
    const key = pegKey(entry.water, entry.peg);
    groups.set(key, [...(groups.get(key) ?? []), entry]);
  }
  return groups;
}

function visitOf(day: Day, entries: readonly RoundEntry[]): ClearanceVisit {
  const measured: MeasuredClearance = Object.assign({}, ...entries.map(measuredOf));
  const has = (kind: RoundEntry['entry']) => entries.some((entry) => entry.entry === kind);
  return { ...measured, day, cut: has('cut'), snagRemoved: has('snag-removed') };
}
