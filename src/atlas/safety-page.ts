import { formatDay } from '../domain/day.ts';
import { type Check, checkOf } from '../domain/due.ts';
import { formatLength } from '../domain/length.ts';
import type { PlaceKind } from '../domain/map.ts';
import { standOffWords } from '../domain/overhead-line-words.ts';
import { kitKnown, kitTrouble } from '../domain/rescue-kit.ts';
import type { Emergency } from '../domain/venue.ts';
import { CASTING_ROD_METRES } from '../ground/swept-area.ts';
import type { Atlas } from './atlas.ts';
import { hazardRegister, type RegisterRow } from './hazard-register.ts';
import { type LinePegs, linePegs } from './line-pegs.ts';
import { closedAlike, pegMention } from './peg-mention.ts';
import type { PegStanding } from './peg-verdicts.ts';
import { clearingCautions, firstSteps, type SafetyAdvice, staySafe } from './safety-advice.ts';
import { pegLink } from './site-link.ts';
import { type ThresholdRow, thresholdRow } from './threshold-words.ts';

/** Hazards of one kind, with its sign and what anyone should do, and every peg that has one. */
export interface HazardGroup {
  readonly id: string;
  readonly sign: string;
  readonly name: string;
  readonly advice: string;
  readonly isHardRule: boolean;
  readonly entries: number;
  readonly rows: readonly {
    readonly water: string;
    /** Pegs of one water with the same words and days: told once. */
    readonly pegs: readonly { readonly peg: string; readonly href: string; readonly standing: PegStanding | null }[];
    readonly place: string;
    /** What this record says to do where it says more than the kind's own advice. */
    readonly action: string | null;
    readonly foundOn: string;
    readonly check: Check;
  }[];
}

/** Pegs of one water that are closed together, on the guide's day or later. */
export interface ClosedPegs {
  readonly water: string;
  readonly pegs: readonly { readonly peg: string; readonly href: string }[];
  readonly standing: PegStanding;
}

/** Rescue kit or defibrillators of one water that were looked at together. */
export interface RescuePlaces {
  readonly sign: string;
  readonly names: string;
  readonly water: string;
  readonly note: string;
  /** "missing when last looked at"; null where nothing is known against it. */
  readonly trouble: string | null;
  readonly check: Check;
}

export interface SafetyPage {
  readonly emergency: Emergency;
  readonly standOff: {
    readonly metres: string;
    readonly spread: string;
    readonly mapError: string;
    readonly pole: string;
    readonly cast: string;
    readonly sectorDegrees: number;
    /** What is swept behind wherever casting is allowed. */
    readonly rodBehind: string;
  };
  readonly lines: readonly LinePegs[];
  readonly closed: readonly ClosedPegs[];
  readonly hazards: readonly HazardGroup[];
  readonly hazardCount: number;
  readonly hazardDays: number;
  readonly rescue: readonly RescuePlaces[];
  readonly rescueKitDays: number;
  readonly thresholds: readonly ThresholdRow[];
  readonly firstSteps: readonly SafetyAdvice[];
  readonly staySafe: readonly SafetyAdvice[];
  /** What stands before any cut. */
  readonly clearing: ReturnType<typeof clearingCautions>;
}

const RESCUE_SIGNS: Partial<Record<PlaceKind, string>> = { aed: 'E010', 'throw-line': 'E041' };

/** Everything on the safety page. */
export function safetyPage(atlas: Atlas): SafetyPage {
  const { settings } = atlas.venue;
  const { units, standOff, permittedReach } = settings;
  const inForce = hazardRegister(atlas).inForce;
  return {
    emergency: settings.emergency,
    standOff: {
      metres: standOffWords(standOff.metres, units),
      spread: formatLength(standOff.conductorSpreadMetres, units, 0),
      mapError: formatLength(standOff.mapErrorMetres, units, 0),
      pole: `${permittedReach.poleMetres} m`,
      cast: `${permittedReach.castMetres} m`,
      sectorDegrees: permittedReach.sectorDegrees,
      rodBehind: `${CASTING_ROD_METRES} m`,
    },
    lines: linePegs(atlas),
    closed: closedPegs(atlas),
    hazards: hazardGroups(inForce),
    hazardCount: inForce.length,
    hazardDays: settings.inspection.hazardDays,
    rescue: rescuePlaces(atlas),
    rescueKitDays: settings.inspection.rescueKitDays,
    thresholds: settings.thresholds.map(thresholdRow),
    firstSteps: firstSteps(settings),
    staySafe: staySafe(settings),
    clearing: clearingCautions(settings),
  };
}

function closedPegs(atlas: Atlas): readonly ClosedPegs[] {
  return [...atlas.pegsByWater].flatMap(([water, pegs]) =>
    closedAlike(pegs.map((peg) => pegMention(atlas, peg))).map((alike) => ({
      water: atlas.watersById.get(water)?.name ?? water,
      ...alike,
    })),
  );
}

function hazardGroups(rows: readonly RegisterRow[]): readonly HazardGroup[] {
  // The register is sorted by urgency, so the group of the most urgent hazard comes first.
  return [...Map.groupBy(rows, ({ kind }) => kind.id).values()].map((group) => {
    const { kind } = group[0]!;
    return {
      id: kind.id,
      sign: kind.sign,
      name: kind.name,
      advice: kind.advice,
      isHardRule: kind.hardRule,
      entries: group.length,
      rows: [...Map.groupBy(group, sameWords).values()].map((alike) => {
        const { waterName, where, peg: firstPeg, hazard, action, check } = alike[0]!;
        return {
          water: firstPeg === undefined ? where : waterName,
          pegs: alike.flatMap(({ water, peg, ofPeg }) =>
            peg === undefined ? [] : [{ peg, href: pegLink(water, peg), standing: ofPeg?.standing ?? null }],
          ),
          place: hazard.place,
          action: action === kind.advice ? null : action,
          foundOn: formatDay(hazard.foundOn),
          check,
        };
      }),
    };
  });
}

/** Equal for hazards that read the same at several pegs of one water. */
function sameWords({ water, peg, where, hazard, action, check }: RegisterRow): string {
  return JSON.stringify([peg === undefined ? where : water, hazard.place, action, hazard.foundOn, check.checkedOn]);
}

/** As the rounds and the records have it, not the map alone: kit that is known to be missing is never listed as if it hung there. */
function rescuePlaces({ venue }: Atlas): readonly RescuePlaces[] {
  return venue.waters.flatMap((water) => {
    const kit = water.map.places
      .filter(({ kind }) => RESCUE_SIGNS[kind] !== undefined)
      .map((place) => ({ ...place, ...kitKnown(place, water, venue.rounds) }));
    const alike = Map.groupBy(kit, ({ kind, note, checkedOn, state }) =>
      JSON.stringify([kind, note, checkedOn, state]),
    );
    return [...alike.values()].map((group): RescuePlaces => {
      const { kind, note, checkedOn, state } = group[0]!;
      return {
        sign: RESCUE_SIGNS[kind]!,
        names: group.map(({ name }) => name).join(', '),
        water: water.name,
        note: note ?? '',
        trouble: kitTrouble(state),
        check: checkOf(checkedOn ?? undefined, undefined, venue.settings.inspection.rescueKitDays),
      };
    });
  });
}
