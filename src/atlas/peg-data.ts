import type { Day, Month } from '../domain/day.ts';
import { isCurrent } from '../domain/hazard.ts';
import { type Peg, pegKey } from '../domain/peg.ts';
import { decidingFacts } from '../domain/peg-facts.ts';
import type { PegFacts, PegVerdict } from '../domain/peg-verdict.ts';
import { standId } from '../domain/stand.ts';
import { closedReason } from '../domain/verdict-words.ts';
import type { PegSurvey, Walk } from '../ground/survey.ts';
import type { Evidence } from '../ratings/ratings.ts';
import { type Atlas, surveyOfPeg } from './atlas.ts';
import { noDepthWords } from './depth-words.ts';
import { factsOfPeg, verdictOfPeg } from './peg-verdicts.ts';

/** The number of what `data/pegs.json` and `ratings --json` mean; 1 had no number, and called worth a return. */
export const JSON_FORMAT = 2;

/** One peg of `data/pegs.json`. Lengths in metres, bearings in degrees clockwise from true north. */
export interface PegDatum {
  readonly water: string;
  readonly peg: string;
  /** Of the stand; stays the same whatever number is on its post. */
  readonly stand: string;
  /** Numbers its post carried before, each with its last day, oldest first. */
  readonly was: readonly { readonly peg: string; readonly until: Day }[];
  /** The verdict of the day `asOf`; closed until `closedUntil`, open-ended where that is null. */
  readonly status: PegVerdict['state'];
  readonly asOf: Day;
  readonly statusReason: string | null;
  readonly closedUntil: Day | null;
  /** What decides it on any day, such as closures that begin or end later. */
  readonly facts: PegFacts;
  readonly position: { readonly lat: number; readonly lng: number };
  readonly gridReference: string | null;
  readonly facing: number;
  /** Whether that was worked out from the shore as drawn. */
  readonly facingEstimated: boolean;
  readonly features: readonly string[];
  /** In force; cleared ones are left out. */
  readonly hazards: readonly {
    readonly kind: string;
    readonly place: string;
    readonly foundOn: string;
    readonly checkedOn: string | null;
  }[];
  /** From the platform to the nearest overhead line's mapped centre, before any allowance; null where there is none. */
  readonly overheadLineM: number | null;
  /** The least of platform and swept area to a line, after the allowances: what the stand-off is held against. */
  readonly overheadLineClearM: number | null;
  /** Multiples of par. */
  readonly worths: readonly {
    readonly month: Month;
    readonly worth: number;
    readonly low80: number;
    readonly high80: number;
    readonly sessions: number;
    readonly evidence: Evidence;
  }[];
  readonly depths: readonly {
    readonly line: string;
    readonly distanceM: number;
    /** Below datum; null where it is not plumbed, then `why` says so. */
    readonly depthM: number | null;
    readonly nearestSoundingM: number | null;
    readonly why: string | null;
  }[];
  readonly reach: readonly {
    readonly what: string;
    readonly name: string | null;
    readonly distanceM: number;
    readonly bearing: number;
  }[];
  /** Shortest way along the drawn paths from any car park; null where none connects. */
  readonly walkM: number | null;
  /** Whether some way from a car park is step-free; null where that is not known. */
  readonly stepFree: boolean | null;
  /** On the fifteenth of each month, local time. */
  readonly sun: readonly {
    readonly month: Month;
    readonly sunrise: string | null;
    readonly sunset: string | null;
    readonly inFace: readonly (readonly [string, string])[];
  }[];
  /** Open water before a wind reaches the peg, for each of sixteen directions. */
  readonly fetch: readonly { readonly from: string; readonly meets: string; readonly fetchM: number }[];
}

/** Every peg of the venue as plain data, by water and then by number. */
export function pegData(atlas: Atlas): readonly PegDatum[] {
  return atlas.venue.waters.flatMap(({ id }) => (atlas.pegsByWater.get(id) ?? []).map((peg) => datum(atlas, peg)));
}

function datum(atlas: Atlas, peg: Peg): PegDatum {
  const key = pegKey(peg.water, peg.peg);
  const survey = surveyOfPeg(atlas, key);
  const { walks } = survey;
  const verdict = verdictOfPeg(atlas, peg);
  return {
    water: peg.water,
    peg: peg.peg,
    stand: standId(peg),
    was: (peg.was ?? []).map(({ peg: number, until }) => ({ peg: number, until })),
    status: verdict.state,
    asOf: atlas.venue.settings.guideDay,
    statusReason: verdict.state === 'closed' ? closedReason(verdict) : null,
    closedUntil: verdict.state === 'closed' ? verdict.until : null,
    facts: decidingFacts(factsOfPeg(atlas, peg)),
    position: { lat: rounded(peg.at.lat, 7), lng: rounded(peg.at.lng, 7) },
    gridReference: survey.gridReference,
    facing: peg.facingDegrees,
    facingEstimated: peg.isFacingEstimated === true,
    features: peg.features,
    hazards: peg.hazards
      .filter(isCurrent)
      .map(({ kind, place, foundOn, checkedOn }) => ({ kind, place, foundOn, checkedOn: checkedOn ?? null })),
    ...lineDistances(survey),
    worths: (atlas.monthsByPeg.get(key) ?? []).map((each) => ({
      month: each.month,
      worth: rounded(each.worth, 4),
      low80: rounded(each.low80, 4),
      high80: rounded(each.high80, 4),
      sessions: each.sessions,
      evidence: each.evidence,
    })),
    depths: survey.lineDepths.map(({ id, distanceMetres, depthMetres, nearestSoundingMetres, why }) => ({
      line: id,
      distanceM: rounded(distanceMetres, 2),
      depthM: roundedOrNull(depthMetres, 2),
      nearestSoundingM: roundedOrNull(nearestSoundingMetres, 1),
      why: why === undefined ? null : noDepthWords(why),
    })),
    reach: survey.reach.map(({ what, name, distanceMetres, bearingDegrees }) => ({
      what,
      name: name ?? null,
      distanceM: rounded(distanceMetres, 1),
      bearing: rounded(bearingDegrees, 1),
    })),
    walkM: roundedOrNull(walks[0]?.distanceMetres ?? null, 1),
    stepFree: stepFree(walks),
    sun: survey.sun.map(({ month, sunrise, sunset, inFace }) => ({ month, sunrise, sunset, inFace })),
    fetch: survey.wind.map(({ from, meets, fetchMetres }) => ({ from, meets, fetchM: rounded(fetchMetres, 1) })),
  };
}

function lineDistances({ standOffs }: PegSurvey): Pick<PegDatum, 'overheadLineM' | 'overheadLineClearM'> {
  if (standOffs.length === 0) return { overheadLineM: null, overheadLineClearM: null };
  return {
    overheadLineM: rounded(Math.min(...standOffs.map(({ mappedMetres }) => mappedMetres)), 2),
    overheadLineClearM: rounded(Math.min(...standOffs.flatMap((line) => [line.platformMetres, line.sweptMetres])), 2),
  };
}

function stepFree(walks: readonly Walk[]): boolean | null {
  if (walks.some((walk) => walk.stepFree === true)) return true;
  return walks.length === 0 || walks.some((walk) => walk.stepFree === null || walk.stepFreeMetres !== undefined)
    ? null
    : false;
}

function rounded(value: number, decimals: number): number {
  return Number(value.toFixed(decimals));
}

function roundedOrNull(value: number | null, decimals: number): number | null {
  return value === null ? null : rounded(value, decimals);
}
