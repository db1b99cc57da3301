import type { Day } from '../domain/day.ts';
import type { Check } from '../domain/due.ts';
import type { Hazard } from '../domain/hazard.ts';
import { type ActBy, actBy, hazardCheck } from '../domain/hazard-check.ts';
import { type HazardEvent, type HazardWhere, hazardHistory } from '../domain/hazard-history.ts';
import type { HazardKind } from '../domain/hazard-kinds.ts';
import { isUnsafePlatform } from '../domain/peg-facts.ts';
import { compareByUrgency, type HazardRisk, hazardKind, riskOf } from '../domain/risk.ts';
import type { Venue } from '../domain/venue.ts';
import { csvText } from './feeds/csv.ts';
import { historyWords } from './hazard-history-words.ts';
import { placeOnWater } from './place-on-water.ts';

/** One hazard, of a peg or of a place that is none, as the club's register lists it. */
export interface RegisterRow {
  readonly water: string;
  readonly waterName: string;
  /** Left out for a hazard that is at no peg. */
  readonly peg?: string;
  /** Where it is for a reader: `Kiln Pool 23`, `Kiln Pool, Lane gate`, `Kiln Pool`. */
  readonly where: string;
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
  /** The record's own words. */
  readonly condition: string;
  /** When it was last looked at; null where nobody said. */
  readonly inspectedOn: Day | null;
}

export interface HazardRegister {
  /** Platforms that must not be used, in the order of the pegs. */
  readonly unsafePlatforms: readonly UnsafePlatformRow[];
  /** Most urgent first: hard rules, then the score that stands now. */
  readonly inForce: readonly RegisterRow[];
  /** Latest cleared first. */
  readonly cleared: readonly RegisterRow[];
  /** The kinds in force, hard rules first, for what is usually advised about each. */
  readonly kinds: readonly HazardKind[];
}

/** Every hazard of the venue, those in force apart from those cleared. */
export function hazardRegister(venue: Venue): HazardRegister {
  const names = new Map(venue.waters.map((water) => [water.id, water.name]));
  const { riskBands, inspection } = venue.settings;
  const rowOf = (hazard: Hazard, at: HazardWhere, where: string): RegisterRow => {
    const kind = hazardKind(hazard.kind);
    return {
      water: at.water,
      waterName: names.get(at.water) ?? at.water,
      ...(at.peg === undefined ? {} : { peg: at.peg }),
      where,
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
        return rowOf(hazard, at, placeOnWater(water, mappedAs));
      }),
    ),
    ...venue.pegs.flatMap(({ water, peg, hazards }) =>
      hazards.map((hazard) => rowOf(hazard, { water, peg }, `${names.get(water) ?? water} ${peg}`)),
    ),
  ];
  const day = (value: Day | undefined) => value ?? '';
  const inForce = rows
    .filter((row) => row.hazard.clearedOn === undefined)
    .sort((a, b) => compareByUrgency(a.risk, b.risk));
  return {
    unsafePlatforms: venue.pegs
      .filter(({ platform }) => isUnsafePlatform(platform))
      .map(({ water, peg, platform }) => ({
        water,
        peg,
        where: `${names.get(water) ?? water} ${peg}`,
        condition: platform?.condition ?? '',
        inspectedOn: platform?.inspectedOn ?? null,
      })),
    inForce,
    kinds: [...new Set(inForce.map((row) => row.kind))],
    cleared: rows
      .filter((row) => row.hazard.clearedOn !== undefined)
      .sort((a, b) => day(b.hazard.clearedOn).localeCompare(day(a.hazard.clearedOn))),
  };
}

/** The register for a spreadsheet: the same rows, one a line, cleared ones last. */
export function registerCsv(register: HazardRegister): string {
  const header = [
    'water',
    'peg',
    'hazard',
    'sign',
    'place',
    'what_to_do',
    'control',
    'severity',
    'likelihood',
    'score',
    'severity_after',
    'likelihood_after',
    'score_after',
    'hard_rule',
    'found_on',
    'checked_on',
    'due_on',
    'act_by',
    'cleared_on',
    'cleared_by',
    'cleared_why',
    'at',
    'history',
  ];
  const rows = [...register.inForce, ...register.cleared].map(({ hazard, risk, ...row }) => [
    row.water,
    row.peg ?? null,
    row.kind.name,
    row.kind.sign,
    hazard.place,
    row.action,
    hazard.control ?? null,
    risk.before.severity,
    risk.before.likelihood,
    risk.before.score,
    risk.after?.severity ?? null,
    risk.after?.likelihood ?? null,
    risk.after?.score ?? null,
    risk.hardRule ? 'yes' : 'no',
    hazard.foundOn,
    hazard.checkedOn ?? null,
    hazard.clearedOn === undefined ? row.check.dueOn : null,
    row.actBy?.on ?? null,
    hazard.clearedOn ?? null,
    hazard.clearedBy ?? null,
    hazard.clearedWhy ?? null,
    row.where,
    row.history.map(historyWords).join('; '),
  ]);
  return csvText(header, rows);
}
