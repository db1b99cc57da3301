import { formatDay } from '../domain/day.ts';
import type { Check } from '../domain/due.ts';
import { hazardCheck } from '../domain/hazard-check.ts';
import type { Water } from '../domain/map.ts';
import { compareByUrgency, hazardKind, riskOf } from '../domain/risk.ts';
import type { Venue } from '../domain/venue.ts';
import { placeFindings } from './place-findings.ts';

/** A current hazard that is at no peg, as the home page and the page of its water tell it. */
export interface PlaceFindingLine {
  readonly sign: string;
  readonly title: string;
  /** "Kiln Pool, Lane gate: chain on it". */
  readonly where: string;
  readonly action: string;
  readonly found: string;
  readonly check: Check;
}

/** What is found at no peg of some waters, most urgent first. */
export function placeFindingLines({ settings }: Venue, waters: readonly Water[]): readonly PlaceFindingLine[] {
  return placeFindings(waters)
    .map((finding) => ({ ...finding, risk: riskOf(finding.hazard, settings.riskBands) }))
    .sort((a, b) => compareByUrgency(a.risk, b.risk))
    .map(({ hazard, where }) => {
      const kind = hazardKind(hazard.kind);
      return {
        sign: kind.sign,
        title: kind.name,
        where: `${where}: ${hazard.place}`,
        action: hazard.action ?? kind.advice,
        found: formatDay(hazard.foundOn),
        check: hazardCheck(hazard, settings.inspection),
      };
    });
}
