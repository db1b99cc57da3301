import { formatDay } from '../domain/day.ts';
import type { Hazard } from '../domain/hazard.ts';
import type { Peg } from '../domain/peg.ts';
import { hazardKind } from '../domain/risk.ts';
import { type Atlas, waterOf } from './atlas.ts';

export interface RoundSheetRow {
  readonly peg: string;
  readonly status: string;
  readonly platform: string;
  readonly clearWidth: string;
  readonly lowestBranch: string;
  readonly pathWidth: string;
  /** Hazards in force, to tick or cross. */
  readonly hazards: readonly string[];
}

/** A sheet to fill by hand: what the record says of each peg, and room beside it. */
export interface RoundSheet {
  readonly waterName: string;
  readonly rows: readonly RoundSheetRow[];
}

/** The sheet of one water, its pegs in the given order. */
export function roundSheet(atlas: Atlas, water: string, pegsInOrder: readonly Peg[]): RoundSheet {
  return {
    waterName: waterOf(atlas, water).name,
    rows: pegsInOrder.map((peg) => ({
      peg: peg.peg,
      status: peg.status,
      platform: peg.platform?.condition ?? '',
      clearWidth: was(peg.clearance?.clearWidthMetres),
      lowestBranch: was(peg.clearance?.lowestBranchMetres),
      pathWidth: was(peg.clearance?.pathWidthMetres),
      hazards: peg.hazards.filter((hazard) => hazard.clearedOn === undefined).map(hazardWords),
    })),
  };
}

function was(metres: number | undefined): string {
  return metres === undefined ? '' : `was ${metres.toFixed(1)} m`;
}

function hazardWords(hazard: Hazard): string {
  const looked = hazard.checkedOn ?? hazard.foundOn;
  return `${hazardKind(hazard.kind).name}, ${hazard.place} (${formatDay(looked)})`;
}
