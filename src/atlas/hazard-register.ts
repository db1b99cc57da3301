import type { Day } from '../domain/day.ts';
import type { Check } from '../domain/due.ts';
import { type Hazard, isCurrent } from '../domain/hazard.ts';
import { type ActBy, actBy, hazardCheck } from '../domain/hazard-check.ts';
import { type HazardEvent, type HazardWhere, hazardHistory } from '../domain/hazard-history.ts';
import type { HazardKind } from '../domain/hazard-kinds.ts';
import { onceFor } from '../domain/once-for.ts';
import type { Peg } from '../domain/peg.ts';
import { isUnsafePlatform } from '../domain/peg-facts.ts';
import type { KeptOpen, PegVerdict } from '../domain/peg-verdict.ts';
import { compareByUrgency, type HazardRisk, hazardKind, riskOf } from '../domain/risk.ts';
import type { Atlas } from './atlas.ts';
import { type PegStanding, standingOfPeg, verdictOfPeg } from './peg-verdicts.ts';
import { placeOnWater } from './place-on-water.ts';

/** How the peg of a row stands. */
export interface PegOfRow {
  /** On the day of the guide. */
  readonly state: PegVerdict['state'];
  readonly standing: PegStanding;
}

/** One hazard, of a peg or of a place that is none, as the club's register lists it. */
export interface RegisterRow {
  readonly water: string;
  readonly waterName: string;
  /** Left out for a hazard that is at no peg. */
  readonly peg?: string;
  /** Where it is for a reader: `Kiln Pool 23`, `Kiln Pool, Lane gate`, `Kiln Pool`. */
  readonly where: string;
  /** How its peg stands, whatever closes it; null for a hazard that is at no peg. */
  readonly ofPeg: PegOfRow | null;
  readonly kind: HazardKind;
  readonly hazard: Hazard;
  /** What the angler should do: the record's words, or the kind's. */
  readonly action: string;
  readonly risk: HazardRisk;
  readonly check: Check;
  /** The day by which the club's band asks for it to be dealt with; null where it sets none, or the hazard is cleared. */
  readonly actBy: ActBy | null;
  /** What happened to it, oldest first. */
  readonly history: readonly HazardEvent[];
}

/** A platform whose record says that it must not be used: a hard rule, though it stands in the record as a condition. */
export interface UnsafePlatformRow {
  readonly water: string;
  readonly peg: string;
  readonly where: string;
  readonly ofPeg: PegOfRow;
  readonly kind: HazardKind;
  /** The record's own words. */
  readonly condition: string;
  /** When it was last looked at; null where nobody said. */
  readonly inspectedOn: Day | null;
  /** Who decided that the peg stays in the draw in spite of it, and why; null where nobody did. */
  readonly keptOpen: KeptOpen | null;
}

export interface HazardRegister {
  /** The day for which the state of each peg is told. */
  readonly guideDay: Day;
  /** Platforms that must not be used, in the order of the pegs. */
  readonly unsafePlatforms: readonly UnsafePlatformRow[];
  /** Most urgent first: hard rules, then the score that stands now. */
  readonly inForce: readonly RegisterRow[];
  /** Latest cleared first. */
  readonly cleared: readonly RegisterRow[];
  /** The kinds in force, hard rules first, for what is usually advised about each. */
  readonly kinds: readonly HazardKind[];
}

/** Every hazard of the venue, those in force apart from those cleared. Worked out once a build. */
export const hazardRegister = onceFor((atlas: Atlas): HazardRegister => {
  const { venue } = atlas;
  const names = new Map(venue.waters.map((water) => [water.id, water.name]));
  const { riskBands, inspection, guideDay } = venue.settings;
  const rowOf = (hazard: Hazard, at: HazardWhere, where: string, ofPeg: PegOfRow | null): RegisterRow => {
    const kind = hazardKind(hazard.kind);
    return {
      water: at.water,
      waterName: names.get(at.water) ?? at.water,
      ...(at.peg === undefined ? {} : { peg: at.peg }),
      where,
      ofPeg,
      kind,
      hazard,
      action: hazard.action ?? kind.advice,
      risk: riskOf(hazard, riskBands),
      check: hazardCheck(hazard, inspection),
      actBy: actBy(hazard, riskBands),
      history: hazardHistory(hazard, at, venue.rounds),
    };
  };
  const rows = [
    ...venue.waters.flatMap((water) =>
      (water.hazards ?? []).map((hazard) => {
        const { mappedAs } = hazard;
        const at = { water: water.id, ...(mappedAs === undefined ? {} : { mappedAs }) };
        return rowOf(hazard, at, placeOnWater(water, mappedAs), null);
      }),
    ),
    ...venue.pegs.flatMap((each) => {
      const { water, peg, hazards } = each;
      if (hazards.length === 0) return [];
      const ofPeg = pegOfRow(atlas, each);
      return hazards.map((hazard) => rowOf(hazard, { water, peg }, `${names.get(water) ?? water} ${peg}`, ofPeg));
    }),
  ];
  const day = (value: Day | undefined) => value ?? '';
  const inForce = rows.filter((row) => isCurrent(row.hazard)).sort((a, b) => compareByUrgency(a.risk, b.risk));
  return {
    guideDay,
    unsafePlatforms: venue.pegs
      .filter(({ platform }) => isUnsafePlatform(platform))
      .map((each) => ({
        water: each.water,
        peg: each.peg,
        where: `${names.get(each.water) ?? each.water} ${each.peg}`,
        ofPeg: pegOfRow(atlas, each),
        kind: hazardKind('unsafe-platform'),
        condition: each.platform?.condition ?? '',
        inspectedOn: each.platform?.inspectedOn ?? null,
        keptOpen: each.platform?.keptOpen ?? null,
      })),
    inForce,
    kinds: [...new Set(inForce.map((row) => row.kind))],
    cleared: rows
      .filter((row) => !isCurrent(row.hazard))
      .sort((a, b) => day(b.hazard.clearedOn).localeCompare(day(a.hazard.clearedOn))),
  };
});

function pegOfRow(atlas: Atlas, peg: Peg): PegOfRow {
  return { state: verdictOfPeg(atlas, peg).state, standing: standingOfPeg(atlas, peg) };
}
