import type {
  GaugeFinding,
  HazardFinding,
  NoticeFinding,
  PegFinding,
  PlaceFinding,
} from '../../content/round-file/round-file.ts';
import { byMeasure } from '../../domain/clearance-measures.ts';
import { formatLength, parseSignedLength } from '../../domain/length.ts';
import { newReference } from '../new-reference.ts';
import { type GaugeDraft, type PegDraft, type PegField, PLACE_MARK } from './draft.ts';
import { DATED_AS } from './finding-of.ts';

/** Turns a finding of a file that was handed over back into what would be typed for it. */
export function pegDraftOf(ref: string, finding: PegFinding, unit: 'm' | 'ft'): PegDraft {
  const length = (metres: number | undefined) => (metres === undefined ? undefined : lengthTyped(metres, unit));
  const typed: Partial<Record<PegField, string | undefined>> = {
    status: finding.status,
    reason: finding.reason,
    platform: finding.platform,
    ...byMeasure(({ key, field }) => [key, length(finding[field])]),
    'snag-removed': finding.snagRemoved === true ? 'yes' : undefined,
    cut: finding.cut === true ? 'yes' : undefined,
    'line-distance': length(finding.lineDistanceMetres),
    'line-method': finding.lineMethod,
    note: finding.note,
    until: finding.until,
  };
  const days = Object.fromEntries(
    Object.entries(DATED_AS).flatMap(([field, name]) => {
      const day = name === undefined ? undefined : finding.days?.[name];
      return day === undefined ? [] : [[field, day] as const];
    }),
  );
  const fields = Object.fromEntries(Object.entries(typed).filter(([, text]) => text !== undefined));
  return {
    ref,
    water: finding.water,
    peg: finding.peg,
    record: finding.record,
    known: finding.known,
    fields,
    ...hazardDraftsOf(finding.hazards),
    ...(finding.at === undefined ? {} : { at: finding.at }),
    ...(finding.day === undefined ? {} : { seenOn: finding.day }),
    ...(Object.keys(days).length === 0 ? {} : { days }),
    seen: true,
  };
}

/** Turns a finding at a place, and a notice written there, back into what would be typed for them. */
export function placeDraftOf(ref: string, { water, ...finding }: PlaceFinding, notice?: NoticeFinding): PegDraft {
  const typed: Partial<Record<PegField, string | undefined>> = {
    kit: finding.kit,
    note: finding.note,
    closing: finding.closing === undefined ? undefined : 'yes',
    reason: finding.closing?.reason,
    until: finding.closing?.until,
    'notice-title': notice?.title,
    'notice-kind': notice?.kind,
    'notice-text': notice?.text,
    'notice-until': notice?.until,
  };
  return {
    ref,
    water,
    peg: `${PLACE_MARK}${finding.place ?? ''}`,
    record: '',
    known: {},
    fields: Object.fromEntries(Object.entries(typed).filter(([, text]) => text !== undefined)),
    ...hazardDraftsOf(finding.hazards),
    ...(finding.day === undefined ? {} : { seenOn: finding.day }),
    seen: true,
  };
}

function hazardDraftsOf(hazards: readonly HazardFinding[]): Pick<PegDraft, 'lookedAt' | 'found'> {
  return {
    lookedAt: hazards.flatMap((hazard) => {
      if (hazard.did === 'found') return [];
      const { severityAfter, likelihoodAfter, ...rest } = hazard;
      const now =
        hazard.did === 'worsened'
          ? { severityNow: String(hazard.severity), likelihoodNow: String(hazard.likelihood) }
          : {
              ...(severityAfter === undefined ? {} : { severityNow: String(severityAfter) }),
              ...(likelihoodAfter === undefined ? {} : { likelihoodNow: String(likelihoodAfter) }),
            };
      return [{ ...rest, ...now }];
    }),
    found: hazards.flatMap((hazard) => {
      if (hazard.did !== 'found') return [];
      const { did: _, severity, likelihood, action, ...rest } = hazard;
      const levels = { severity: String(severity), likelihood: String(likelihood) };
      return [{ id: newReference(), ...rest, action: action ?? '', ...levels }];
    }),
  };
}

/** Turns a gauge reading of a file back into what would be typed for it. */
export function gaugeDraftOf(ref: string, finding: GaugeFinding, unit: 'm' | 'ft'): GaugeDraft {
  const { water, levelMetres, waterDegreesC, day } = finding;
  return {
    ref,
    water,
    level: levelMetres === undefined ? '' : lengthTyped(levelMetres, unit),
    temperature: waterDegreesC === undefined ? '' : String(waterDegreesC),
    ...(day === undefined ? {} : { day }),
  };
}

/** In the unit it was typed in where that says exactly the same, else in metres. */
function lengthTyped(metres: number, unit: 'm' | 'ft'): string {
  if (unit === 'm') return String(metres);
  const feet = formatLength(metres, { length: 'ft' }).replace('−', '-');
  const read = parseSignedLength(feet, 'ft');
  return read.ok && Math.abs(read.value - metres) < 0.0001 ? feet : `${metres} m`;
}
