import type { Units } from '../domain/bag.ts';
import { CLEARANCE_MEASURES } from '../domain/clearance-measures.ts';
import type { Day } from '../domain/day.ts';
import { formatLength } from '../domain/length.ts';
import { type Peg, pegKey } from '../domain/peg.ts';
import { hasLineAbout } from '../ground/stand-off.ts';
import { type Atlas, surveyOfPeg, waterOf } from './atlas.ts';
import { type ClearanceVisit, clearanceByPeg, type PegClearance } from './cut-history.ts';
import { clearanceAnchor, isToBeCut, type NextCut, nextCut } from './cuts-due.ts';
import { type PegStanding, standingOfPeg } from './peg-verdicts.ts';
import { pegLink } from './site-link.ts';

/** One visit of a peg's clearance history, in words; empty where nothing was measured. */
export interface ClearanceRow {
  readonly day: Day;
  /** In the order of `CLEARANCE_MEASURES`. */
  readonly measured: readonly string[];
  /** "cut, snag taken out". */
  readonly done: string;
}

export interface PegClearanceHistory {
  readonly peg: string;
  readonly href: string;
  /** Fragment of the page: `peg-12`. */
  readonly anchor: string;
  /** Latest first. */
  readonly rows: readonly ClearanceRow[];
  readonly next: NextCut | null;
  /** Nobody is sent to cut at a peg that is closed on the day of the guide: then no next cut is given. */
  readonly isClosed: boolean;
  readonly standing: PegStanding;
  /** An overhead line is near enough that no one cuts here before the network operator was asked. */
  readonly nearLine: boolean;
}

/** The clearance of every peg of a water through time. */
export interface ClearancePage {
  readonly waterName: string;
  /** In the order of the numbers on the posts. */
  readonly pegs: readonly PegClearanceHistory[];
}

/** The clearance page of one water. */
export function clearancePage(atlas: Atlas, water: string): ClearancePage {
  const byPeg = clearanceByPeg(atlas.venue);
  return {
    waterName: waterOf(atlas, water).name,
    pegs: (atlas.pegsByWater.get(water) ?? []).map((peg) =>
      pegHistory(atlas, peg, byPeg.get(pegKey(water, peg.peg)) ?? { visits: [], forecast: null }),
    ),
  };
}

function pegHistory(atlas: Atlas, peg: Peg, { visits, forecast }: PegClearance): PegClearanceHistory {
  const { units, nestingMonths, standOff } = atlas.venue.settings;
  const survey = surveyOfPeg(atlas, pegKey(peg.water, peg.peg));
  const isClosed = !isToBeCut(atlas, peg);
  return {
    peg: peg.peg,
    href: pegLink(peg.water, peg.peg),
    anchor: clearanceAnchor(peg.peg),
    rows: visits.map((visit) => clearanceRow(visit, units)),
    next: forecast === null || isClosed ? null : nextCut(forecast, nestingMonths),
    isClosed,
    standing: standingOfPeg(atlas, peg),
    nearLine: hasLineAbout(survey, standOff),
  };
}

function clearanceRow(visit: ClearanceVisit, units: Units): ClearanceRow {
  const length = (metres: number | undefined) => (metres === undefined ? '' : formatLength(metres, units, 1));
  return {
    day: visit.day,
    measured: CLEARANCE_MEASURES.map(({ field }) => length(visit[field])),
    done: [visit.cut && 'cut', visit.snagRemoved && 'snag taken out'].filter(Boolean).join(', '),
  };
}
