import { CLEARANCE_MEASURES } from '../domain/clearance-measures.ts';
import { type Day, formatDay, yearOf } from '../domain/day.ts';
import { type Hazard, isCurrent } from '../domain/hazard.ts';
import { formatLength } from '../domain/length.ts';
import { lineDistanceWords } from '../domain/overhead-line-words.ts';
import { type Peg, pegKey } from '../domain/peg.ts';
import { hazardKind } from '../domain/risk.ts';
import type { VenueSettings } from '../domain/venue.ts';
import { hasLineAbout } from '../ground/stand-off.ts';
import { type Atlas, surveyOfPeg, waterOf } from './atlas.ts';
import { verdictOfPeg } from './peg-verdicts.ts';
import { roundPlaces } from './round-places.ts';
import { roundOfWater } from './walking-order.ts';

/** One peg of the sheet: what the record says, small, beside the room to write. Empty where nothing is on record. */
export interface RoundSheetRow {
  readonly peg: string;
  readonly isClosed: boolean;
  readonly platform: string;
  /** In the order of `CLEARANCE_MEASURES`. */
  readonly measured: readonly string[];
  /** Hazards in force, each with a box. */
  readonly hazards: readonly string[];
  /** Open and near an overhead line: what was measured so far, or "not measured". Null elsewhere. */
  readonly lineDistance: string | null;
}

/** A sheet to fill by hand: pegs in walking order, then the places of the water that are no peg. */
export interface RoundSheet {
  readonly waterName: string;
  readonly venueName: string;
  /** "From Kiln car park". */
  readonly from: string | null;
  readonly rows: readonly RoundSheetRow[];
  /** What is at no peg: the water, its rescue kit, gates, car parks and paths. */
  readonly places: readonly RoundSheetPlace[];
}

/** One place of the sheet that is no peg. */
export interface RoundSheetPlace {
  readonly name: string;
  /** Rescue kit is ticked as in place, damaged or missing. */
  readonly isKit: boolean;
  /** "checked 14 Nov 2026", "missing, checked 14 Nov 2026"; empty where it is no kit. */
  readonly facts: string;
  /** Hazards in force there, each with a box. */
  readonly hazards: readonly string[];
}

/** The sheet of one water. */
export function roundSheet(atlas: Atlas, water: string): RoundSheet {
  const { settings } = atlas.venue;
  const { stops, from } = roundOfWater(atlas, water);
  return {
    waterName: waterOf(atlas, water).name,
    venueName: settings.name,
    from: from === null ? null : `From ${from.name}`,
    rows: stops.map(({ peg: name }) => {
      const key = pegKey(water, name);
      const hasLine = hasLineAbout(surveyOfPeg(atlas, key), settings.standOff);
      const peg = atlas.pegsByKey.get(key)!;
      return sheetRow(peg, verdictOfPeg(atlas, peg).state === 'closed', hasLine, settings);
    }),
    places: roundPlaces(atlas, water).map(({ name, isKit, facts, hazards }) => ({
      name,
      isKit,
      facts,
      hazards: hazards.map((hazard) => `${hazard.name}, ${hazard.place} (${hazard.lookedAt})`),
    })),
  };
}

function sheetRow(peg: Peg, isClosed: boolean, hasLine: boolean, { units, guideDay }: VenueSettings): RoundSheetRow {
  const was = (metres: number | undefined) => (metres === undefined ? '' : formatLength(metres, units, 1));
  const measured = peg.measuredLineDistance;
  return {
    peg: peg.peg,
    isClosed,
    platform: peg.platform?.condition ?? '',
    measured: CLEARANCE_MEASURES.map(({ field }) => was(peg.clearance?.[field])),
    hazards: hazardsWords(peg, guideDay),
    lineDistance:
      !hasLine || isClosed
        ? null
        : measured === undefined
          ? 'not measured'
          : `was ${lineDistanceWords(measured.distanceMetres, units)}`,
  };
}

/** Each with the day it was last looked at; with one day for all of them, that stands behind the last alone. */
function hazardsWords(peg: Peg, guideDay: Day): readonly string[] {
  const inForce = peg.hazards.filter(isCurrent);
  const days = inForce.map((hazard) => lookedAtWords(hazard, guideDay));
  return inForce.map(({ kind, place }, index) => {
    const isSaidLater = index < inForce.length - 1 && new Set(days).size === 1;
    return `${hazardKind(kind).name}, ${place}${isSaidLater ? '' : ` (${days[index]})`}`;
  });
}

/** Without the year where that is this one: the sheet is narrow. */
function lookedAtWords({ checkedOn, foundOn }: Hazard, guideDay: Day): string {
  const looked = checkedOn ?? foundOn;
  return yearOf(looked) === yearOf(guideDay) ? formatDay(looked).slice(0, -5) : formatDay(looked);
}
