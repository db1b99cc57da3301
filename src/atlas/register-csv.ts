import { isCurrent } from '../domain/hazard.ts';
import { csvText } from './feeds/csv.ts';
import { historyWords } from './hazard-history-words.ts';
import type { HazardRegister, PegOfRow, RegisterRow, UnsafePlatformRow } from './hazard-register.ts';

type Cell = string | number | null;

/** The columns, in their order. New ones are added at the end, so that a club's spreadsheet goes on reading the old. */
const COLUMNS = [
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
  'peg_state',
  'peg_state_on',
  'peg_closed_because',
] as const;

type CsvRow = Partial<Record<(typeof COLUMNS)[number], Cell>>;

/**
 * The register for a spreadsheet, all that its page lists: platforms not to be used, current hazards, cleared ones last.
 * Each row repeats how its peg stands on the day of the guide, so that no row read alone calls a closed peg open.
 */
export function registerCsv({ unsafePlatforms, inForce, cleared, guideDay }: HazardRegister): string {
  const rows = [
    ...unsafePlatforms.map((row) => ({ ...platformRow(row), ...stateOf(row.ofPeg, guideDay) })),
    ...[...inForce, ...cleared].map((row) => ({ ...hazardRow(row), ...stateOf(row.ofPeg, guideDay) })),
  ];
  return csvText(
    COLUMNS,
    rows.map((row: CsvRow) => COLUMNS.map((column) => row[column] ?? null)),
  );
}

function hazardRow({ hazard, risk, ...row }: RegisterRow): CsvRow {
  return {
    water: row.water,
    peg: row.peg ?? null,
    hazard: row.kind.name,
    sign: row.kind.sign,
    place: hazard.place,
    what_to_do: row.action,
    control: hazard.control ?? null,
    severity: risk.before.severity,
    likelihood: risk.before.likelihood,
    score: risk.before.score,
    severity_after: risk.after?.severity ?? null,
    likelihood_after: risk.after?.likelihood ?? null,
    score_after: risk.after?.score ?? null,
    hard_rule: risk.hardRule ? 'yes' : 'no',
    found_on: hazard.foundOn,
    checked_on: row.check.checkedOn,
    due_on: isCurrent(hazard) ? row.check.dueOn : null,
    act_by: row.actBy?.on ?? null,
    cleared_on: hazard.clearedOn ?? null,
    cleared_by: hazard.clearedBy ?? null,
    cleared_why: hazard.clearedWhy ?? null,
    at: row.where,
    history: row.history.map(historyWords).join('; '),
  };
}

/** A platform's condition is no scored hazard: severity, likelihood and the day of finding are not on record. */
function platformRow({ water, peg, where, kind, condition, inspectedOn, keptOpen }: UnsafePlatformRow): CsvRow {
  return {
    water,
    peg,
    hazard: kind.name,
    sign: kind.sign,
    place: condition,
    what_to_do: kind.advice,
    hard_rule: 'yes',
    checked_on: inspectedOn,
    at: where,
    history: keptOpen === null ? null : historyWords({ did: 'kept open', words: keptOpen.why, ...keptOpen }),
  };
}

function stateOf(ofPeg: PegOfRow | null, guideDay: string): CsvRow {
  if (ofPeg === null) return {};
  return {
    peg_state: ofPeg.state,
    peg_state_on: guideDay,
    peg_closed_because: ofPeg.standing.closed?.because ?? null,
  };
}
