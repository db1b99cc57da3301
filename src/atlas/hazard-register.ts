import type { Day } from '../domain/day.ts';
import { type Check, checkOf } from '../domain/due.ts';
import type { Hazard } from '../domain/hazard.ts';
import type { HazardKind } from '../domain/hazard-kinds.ts';
import { type PegKey, pegKey } from '../domain/peg.ts';
import { compareByUrgency, type HazardRisk, hazardKind, riskOf } from '../domain/risk.ts';
import type { Venue } from '../domain/venue.ts';
import { csvText } from './feeds/csv.ts';

/** One hazard of one peg as the club's register lists it. */
export interface RegisterRow {
  readonly key: PegKey;
  readonly water: string;
  readonly waterName: string;
  readonly peg: string;
  readonly kind: HazardKind;
  readonly hazard: Hazard;
  /** What the angler should do: the record's words, or the kind's. */
  readonly action: string;
  readonly risk: HazardRisk;
  readonly check: Check;
}

export interface HazardRegister {
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
  const rows = venue.pegs.flatMap((peg) =>
    peg.hazards.map((hazard): RegisterRow => {
      const kind = hazardKind(hazard.kind);
      return {
        key: pegKey(peg.water, peg.peg),
        water: peg.water,
        waterName: names.get(peg.water) ?? peg.water,
        peg: peg.peg,
        kind,
        hazard,
        action: hazard.action ?? kind.advice,
        risk: riskOf(hazard, venue.settings.riskBands),
        check: checkOf(hazard.checkedOn, hazard.foundOn, venue.settings.inspection.hazardDays),
      };
    }),
  );
  const day = (value: Day | undefined) => value ?? '';
  const inForce = rows
    .filter((row) => row.hazard.clearedOn === undefined)
    .sort((a, b) => compareByUrgency(a.risk, b.risk));
  return {
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
    'cleared_on',
  ];
  const rows = [...register.inForce, ...register.cleared].map(({ hazard, risk, ...row }) => [
    row.water,
    row.peg,
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
    hazard.clearedOn ?? null,
  ]);
  return csvText(header, rows);
}
