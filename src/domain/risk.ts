import type { Hazard, RiskLevel } from './hazard.ts';
import { HAZARD_KINDS, type HazardKind } from './hazard-kinds.ts';
import type { RiskBand } from './venue.ts';

/** A score on the 5 × 5 consequence/likelihood matrix (ISO 31010:2019, B.10.3), with the venue's word for it. */
export interface RiskScore {
  readonly severity: RiskLevel;
  readonly likelihood: RiskLevel;
  /** Severity × likelihood, 1 to 25. */
  readonly score: number;
  readonly band: string;
}

/** A hazard's risk before and after the control, and whether a hard rule stands above the score. */
export interface HazardRisk {
  readonly before: RiskScore;
  /** Null where the record gives no figures after a control: then nothing is claimed for it. */
  readonly after: RiskScore | null;
  readonly hardRule: boolean;
}

/** The kind of a hazard; the general one for a word that is not known here. */
export function hazardKind(id: string): HazardKind {
  return HAZARD_KINDS.find((kind) => kind.id === id) ?? (HAZARD_KINDS.at(-1) as HazardKind);
}

/** The band a score falls into: the last one that starts at or below it. Bands are sorted by `from`, the first at 1. */
export function riskBand(score: number, bands: readonly RiskBand[]): RiskBand | undefined {
  return bands.filter((band) => band.from <= score).at(-1);
}

/** Severity × likelihood before and after the control. Only one figure given after: the other stays as it was. */
export function riskOf(hazard: Hazard, bands: readonly RiskBand[]): HazardRisk {
  const scored = (severity: RiskLevel, likelihood: RiskLevel): RiskScore => ({
    severity,
    likelihood,
    score: severity * likelihood,
    band: riskBand(severity * likelihood, bands)?.name ?? '',
  });
  const hasAfter = hazard.severityAfter !== undefined || hazard.likelihoodAfter !== undefined;
  return {
    before: scored(hazard.severity, hazard.likelihood),
    after: hasAfter
      ? scored(hazard.severityAfter ?? hazard.severity, hazard.likelihoodAfter ?? hazard.likelihood)
      : null,
    hardRule: hazardKind(hazard.kind).hardRule,
  };
}

/**
 * What decides the order in which hazards are read: hard rules first, then the score that stands now. A control lowers
 * the place of a hazard but never that of a hard rule.
 */
export function compareByUrgency(a: HazardRisk, b: HazardRisk): number {
  if (a.hardRule !== b.hardRule) return a.hardRule ? -1 : 1;
  return (b.after ?? b.before).score - (a.after ?? a.before).score;
}
