import { type Hazard, isCurrent } from './hazard.ts';
import type { Water } from './map.ts';
import type { Notice } from './notice.ts';
import { concernsPeg, replacedFrom } from './notice-state.ts';
import { type Peg, type PermittedReach, type Platform, pegKey } from './peg.ts';
import { type ClosingHazard, type ClosingRule, isInsideStandOff, type LineFact, type PegFacts } from './peg-verdict.ts';
import { hazardKind, riskBand, riskOf } from './risk.ts';
import type { RiskBand, VenueSettings } from './venue.ts';

/** The condition of a platform that must not be used; any other word describes it and closes nothing. */
export const UNSAFE_PLATFORM = 'unsafe';

/**
 * Gathers what decides whether a peg may be fished.
 * @param notices all of the venue: those that close this peg are picked out
 * @param ofWater hazards of its whole water, which close every peg on it
 * @param lines every overhead line known about the peg, mapped, recorded or measured
 */
export function pegFacts(
  peg: Peg,
  notices: readonly Notice[],
  lines: readonly LineFact[],
  settings: Pick<VenueSettings, 'standOff' | 'permittedReach' | 'riskBands'>,
  ofWater: readonly Hazard[] = [],
): PegFacts {
  const key = pegKey(peg.water, peg.peg);
  const closures = notices
    .filter((notice) => notice.kind === 'closure' && concernsPeg(notice, peg.water, key))
    .map((notice) => {
      const replaced = replacedFrom(notice, notices);
      return {
        notice: notice.id,
        title: notice.title,
        from: notice.from,
        ...(notice.until === undefined ? {} : { until: notice.until }),
        ...(replaced === null ? {} : { replacedFrom: replaced }),
      };
    });
  const hazards = [...closingHazards([...peg.hazards, ...ofWater], settings.riskBands), ...platformKeptOpen(peg)];
  const limits = limitsBelow(peg.limits, settings.permittedReach);
  return {
    status: peg.status,
    ...(peg.status === 'open' || peg.statusSince === undefined ? {} : { since: peg.statusSince }),
    ...(peg.status === 'open' || peg.statusReason === undefined ? {} : { reason: peg.statusReason }),
    ...(closures.length === 0 ? {} : { closures }),
    standOffMetres: settings.standOff.metres,
    ...(lines.length === 0 ? {} : { lines }),
    ...(hazards.length === 0 ? {} : { hazards }),
    ...(isUnsafePlatform(peg.platform) && peg.platform?.keptOpen === undefined
      ? { unsafePlatform: peg.platform?.condition as string }
      : {}),
    ...(Object.keys(limits).length === 0 ? {} : { limits }),
  };
}

/** The same without what decides nothing on any day: overhead lines outside the stand-off. For the phone and the data files. */
export function decidingFacts(facts: PegFacts): PegFacts {
  const { lines = [], ...rest } = facts;
  const inside = lines.filter((line) => isInsideStandOff(line, facts.standOffMetres));
  return inside.length === 0 ? rest : { ...rest, lines: inside };
}

/** An unsafe platform of a peg that somebody decided to keep in the draw, as the hazard that it is. */
function platformKeptOpen(peg: Pick<Peg, 'platform'>): readonly ClosingHazard[] {
  const { keptOpen, inspectedOn } = peg.platform ?? {};
  if (!isUnsafePlatform(peg.platform) || keptOpen === undefined) return [];
  const { id: kind, name } = hazardKind('unsafe-platform');
  return [
    { kind, name, place: 'the platform', foundOn: inspectedOn ?? keptOpen.on, why: { rule: 'hard-rule' }, keptOpen },
  ];
}

/** Whether the record says that a platform must not be used. */
export function isUnsafePlatform(platform: Platform | undefined): boolean {
  return platform?.condition?.trim().toLowerCase().startsWith(UNSAFE_PLATFORM) ?? false;
}

/**
 * The current hazards that close a peg: those of a kind that is a hard rule, and those whose score falls into a band
 * that takes a peg out of the draw. Overhead lines are not among them: there the distance decides, never the score.
 */
export function closingHazards(hazards: readonly Hazard[], bands: readonly RiskBand[]): readonly ClosingHazard[] {
  return hazards.flatMap((hazard) => {
    const why = isCurrent(hazard) ? closingRule(hazard, bands) : null;
    if (why === null) return [];
    const { kind, place, foundOn, keptOpen } = hazard;
    const closing = { kind, name: hazardKind(kind).name, place, foundOn, why };
    return [keptOpen === undefined ? closing : { ...closing, keptOpen }];
  });
}

/** A control lowers a score, but never softens a hard rule. */
function closingRule(hazard: Hazard, bands: readonly RiskBand[]): ClosingRule | null {
  if (hazard.kind === 'overhead-line') return null;
  const { before, after, hardRule } = riskOf(hazard, bands);
  if (hardRule) return { rule: 'hard-rule' };
  const band = riskBand((after ?? before).score, bands);
  return band?.closes === true ? { rule: 'band', band: band.name } : null;
}

function limitsBelow(limits: Partial<PermittedReach>, permitted: PermittedReach): Partial<PermittedReach> {
  const entries = Object.entries(limits) as [keyof PermittedReach, number | undefined][];
  return Object.fromEntries(entries.filter(([what, value]) => value !== undefined && value < permitted[what]));
}

/** Current hazards that a water's record puts at no place of its map: they are at every peg. */
export function hazardsOfWholeWater({ hazards = [] }: Pick<Water, 'hazards'>): readonly Hazard[] {
  return hazards.filter((hazard) => hazard.mappedAs === undefined && isCurrent(hazard));
}
