import { type Day, formatDay, type Month } from '../domain/day.ts';
import { type NestingWait, nestingWait } from '../domain/nesting.ts';
import { type Peg, pegKey } from '../domain/peg.ts';
import type { CutForecast } from '../ratings/cuts/forecast-cuts.ts';
import type { Atlas } from './atlas.ts';
import { clearanceByPeg } from './cut-history.ts';
import { verdictOfPeg } from './peg-verdicts.ts';
import { siteLink } from './site-link.ts';

/** The next cut of a peg, as estimated, in words. */
export interface NextCut {
  readonly lastCut: Day;
  readonly dueOn: Day;
  /** "12 Jan 2027 to 3 May 2027". */
  readonly spread: string;
  /** What it rests on: "3 intervals of its own and the venue’s usual", "the venue’s usual alone". */
  readonly basis: string;
  /** It has gone without a cut for longer than nine in ten intervals would. */
  readonly isLate: boolean;
  /** Where the day lies in the nesting months. */
  readonly wait: NestingWait | null;
}

/** The next cut of one peg of the venue. */
export interface CutDue extends NextCut {
  /** "Kiln Pool 12". */
  readonly name: string;
  /** Its clearance history. */
  readonly href: string;
}

/** Whether a next cut is estimated at all: nobody is sent to cut at a peg that is closed, or inside a stand-off. */
export function isToBeCut(atlas: Atlas, peg: Peg): boolean {
  return verdictOfPeg(atlas, peg).state !== 'closed';
}

/** The next cut of every peg that is open and whose earlier cuts allow an estimate, the first due first. */
export function cutsDue(atlas: Atlas): readonly CutDue[] {
  const { nestingMonths } = atlas.venue.settings;
  const byPeg = clearanceByPeg(atlas.venue);
  return [...atlas.pegsByWater]
    .flatMap(([water, pegs]) =>
      pegs
        .filter((peg) => isToBeCut(atlas, peg))
        .flatMap(({ peg }): readonly CutDue[] => {
          const forecast = byPeg.get(pegKey(water, peg))?.forecast ?? null;
          if (forecast === null) return [];
          const name = `${atlas.watersById.get(water)?.name ?? water} ${peg}`;
          return [{ name, href: clearanceLink(water, peg), ...nextCut(forecast, nestingMonths) }];
        }),
    )
    .sort((a, b) => a.dueOn.localeCompare(b.dueOn));
}

/** An estimate with its spread and what it rests on, in words. */
export function nextCut(forecast: CutForecast, nestingMonths: readonly Month[]): NextCut {
  const { lastCut, dueOn, earliest, latest, ownIntervals, isMeasured, isLate } = forecast;
  const intervals = ownIntervals === 1 ? '1 interval of its own' : `${ownIntervals} intervals of its own`;
  return {
    lastCut,
    dueOn,
    spread: `${formatDay(earliest)} to ${formatDay(latest)}`,
    basis: [
      ...(ownIntervals === 0 ? [] : [intervals]),
      ...(isMeasured ? ['the width measured since'] : []),
      ownIntervals === 0 && !isMeasured ? 'the venue’s usual alone' : 'the venue’s usual',
    ].join(', '),
    isLate,
    wait: nestingWait(dueOn, nestingMonths),
  };
}

/** Where a peg's clearance history stands. */
export function clearanceLink(water: string, peg: string): string {
  return siteLink(`due/clearance/${encodeURIComponent(water)}/#${clearanceAnchor(peg)}`);
}

/** The fragment of a peg's history on its water's clearance page. */
export function clearanceAnchor(peg: string): string {
  return `peg-${peg}`;
}
