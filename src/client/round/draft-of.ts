import type { GaugeFinding, PegFinding } from '../../content/round-file/round-file.ts';
import { formatLength, parseSignedLength } from '../../domain/length.ts';
import { type GaugeDraft, newRef, type PegDraft, type PegField } from './draft.ts';

/** Turns a finding of a file that was handed over back into what would be typed for it. */
export function pegDraftOf(ref: string, finding: PegFinding, unit: 'm' | 'ft'): PegDraft {
  const length = (metres: number | undefined) => (metres === undefined ? undefined : lengthTyped(metres, unit));
  const typed: Record<PegField, string | undefined> = {
    status: finding.status,
    reason: finding.reason,
    platform: finding.platform,
    'clear-width': length(finding.clearWidthMetres),
    'lowest-branch': length(finding.lowestBranchMetres),
    'path-width': length(finding.pathWidthMetres),
    'snag-removed': finding.snagRemoved === true ? 'yes' : undefined,
    cut: finding.cut === true ? 'yes' : undefined,
    'line-distance': length(finding.lineDistanceMetres),
    'line-method': finding.lineMethod,
    note: finding.note,
  };
  const fields = Object.fromEntries(Object.entries(typed).filter(([, text]) => text !== undefined));
  return {
    ref,
    water: finding.water,
    peg: finding.peg,
    record: finding.record,
    known: finding.known,
    fields,
    lookedAt: finding.hazards.flatMap((hazard) => (hazard.did === 'found' ? [] : [hazard])),
    found: finding.hazards.flatMap((hazard) => {
      if (hazard.did !== 'found') return [];
      const { did: _, severity, likelihood, action, ...rest } = hazard;
      const levels = { severity: String(severity), likelihood: String(likelihood) };
      return [{ id: newRef(), ...rest, action: action ?? '', ...levels }];
    }),
    ...(finding.at === undefined ? {} : { at: finding.at }),
    seen: true,
  };
}

/** Turns a gauge reading of a file back into what would be typed for it. */
export function gaugeDraftOf(ref: string, finding: GaugeFinding, unit: 'm' | 'ft'): GaugeDraft {
  const { water, levelMetres, waterDegreesC } = finding;
  return {
    ref,
    water,
    level: levelMetres === undefined ? '' : lengthTyped(levelMetres, unit),
    temperature: waterDegreesC === undefined ? '' : String(waterDegreesC),
  };
}

/** In the unit it was typed in where that says exactly the same, else in metres. */
function lengthTyped(metres: number, unit: 'm' | 'ft'): string {
  if (unit === 'm') return String(metres);
  const feet = formatLength(metres, { length: 'ft' }).replace('−', '-');
  const read = parseSignedLength(feet, 'ft');
  return read.ok && Math.abs(read.value - metres) < 0.0001 ? feet : `${metres} m`;
}
