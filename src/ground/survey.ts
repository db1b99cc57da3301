import type { Day, Month } from '../domain/day.ts';
import type { MapPlace } from '../domain/map.ts';
import type { PegKey } from '../domain/peg.ts';
import type { LineFact } from '../domain/peg-verdict.ts';
import type { LatLng } from '../domain/place.ts';

/** The result of surveying a venue: everything that can be computed from where things are. Plain data. */
export interface Survey {
  readonly waters: Readonly<Record<string, WaterSurvey>>;
  readonly pegs: Readonly<Record<PegKey, PegSurvey>>;
}

export interface Isobath {
  readonly depthMetres: number;
  /** Closed where the first and last position are equal. */
  readonly lines: readonly (readonly LatLng[])[];
}

export interface WaterSurvey {
  readonly areaSquareMetres: number;
  /** Null where the water has no sounding. */
  readonly depth: {
    readonly meanMetres: number;
    readonly maximumMetres: number;
    readonly volumeCubicMetres: number;
    /** Soundings used. */
    readonly soundings: number;
    /** Of those used, how many without any level: taken as if the water had stood at datum. */
    readonly uncorrected: number;
    /** Share of the area within the stated distance of a sounding (0 to 1); elsewhere the depth is not plumbed. */
    readonly plumbedShare: number;
    /** Soundings that were not used, counted by reason. */
    readonly unused: readonly UnusedSoundings[];
    readonly isobaths: readonly Isobath[];
  } | null;
  /** The latest level above datum, and when it was read. */
  readonly level: { readonly metres: number; readonly day: Day } | null;
  /** The zone its clock times are in: `Europe/London` in Great Britain, elsewhere `UTC`, and pages say so. */
  readonly timeZone: string;
}

/** Soundings of one water that its depths are not made of. */
export interface UnusedSoundings {
  readonly why: 'outside' | 'on-island' | 'peg-unknown' | 'plumbed-again';
  readonly soundings: number;
}

/** Why a line has no depth: nobody plumbed it, or it ends before the water, behind the far bank or on an island. */
export type NoDepth = 'unplumbed' | 'short' | 'beyond' | 'island';

/** Depth along one line of the trade. `depthMetres` is null where it is not plumbed. */
export interface LineDepth {
  /** `margin`, `top-kit-2`, `pole-6`, `pole-11`, `pole-13`, `pole-16`, `cast-20`, `cast-30`, `cast-40`. */
  readonly id: string;
  readonly name: string;
  readonly distanceMetres: number;
  readonly depthMetres: number | null;
  readonly nearestSoundingMetres: number | null;
  /** Said where there is no depth. */
  readonly why?: NoDepth;
  /** Whether the peg permits fishing there: its record's limits and the venue's permission. */
  readonly permitted: boolean;
}

export interface ProfilePoint {
  readonly distanceMetres: number;
  /** Null where not plumbed; 0 on land. */
  readonly depthMetres: number | null;
  readonly land: boolean;
}

/** Something that lies inside the fishing sector, measured to its nearest point there that no dry land hides. */
export interface ReachTarget {
  /** `far-bank` (straight out along the facing), `island`, `reeds`, `lilies`, `aerator`, `inlet`. */
  readonly what: string;
  readonly name?: string;
  readonly distanceMetres: number;
  readonly bearingDegrees: number;
  /** Distance straight out along the facing, where it lies there. */
  readonly aheadMetres?: number;
}

export interface NearbyPlace {
  readonly name: string;
  readonly place: MapPlace;
  readonly distanceMetres: number;
  readonly bearingDegrees: number;
  /** Distance along the drawn paths where they connect, else null. */
  readonly walkMetres: number | null;
  readonly at: LatLng;
}

/** By which gate an ambulance comes to a peg. */
export interface GatesOfPeg {
  /** The nearest that is open by day; where none is known to be, the nearest there is. Null where no gate is mapped. */
  readonly best: NearbyPlace | null;
  /** The nearest that is never locked, where the best is locked at night. */
  readonly atNight: NearbyPlace | null;
  /** One that is kept locked, or may be, and lies nearer than the best. */
  readonly lockedNearer: NearbyPlace | null;
}

/** How an overhead line stands to a peg. Distances run to the centre line less half the spread less the map error. */
export interface LineStandOff {
  readonly line: string;
  readonly name: string;
  readonly voltageVolts?: number;
  readonly heightMetres?: number;
  /** Ground distance from the platform to the mapped centre line, as mapped. */
  readonly mappedMetres: number;
  readonly bearingDegrees: number;
  /** Platform to line after the allowances; a smaller measured distance takes its place. */
  readonly platformMetres: number;
  /** Swept area (pole ahead and shipped back, cast within the sector) to line after the allowances. */
  readonly sweptMetres: number;
  readonly verdict: 'clear' | 'near' | 'inside';
}

/** What limit in the record would keep a peg open, where one would. */
export interface KeepOpenLimit {
  readonly poleMetres?: number;
  readonly castMetres?: number;
  readonly sectorDegrees?: number;
}

/** What a path may or may not state. */
export type WalkFact = 'steps' | 'gradient' | 'width';

export interface Walk {
  readonly from: string;
  readonly distanceMetres: number;
  readonly steps: number;
  /** Steepest stated gradient on the way, rise over run; null where no path states one. */
  readonly steepest: number | null;
  readonly stepFree: boolean | null;
  /** Narrowest stated width of a path on the way; null where none states one. */
  readonly narrowestMetres: number | null;
  /** What at least one path on the way does not state: the figures above are of the others only. */
  readonly notStated: readonly WalkFact[];
  /** Names of overhead lines the way passes below or inside the stand-off. */
  readonly underLines: readonly string[];
  /** The shortest way without a known step, where there is one and it is not the shortest way itself. */
  readonly stepFreeMetres?: number;
}

/** Wind from one of sixteen directions, as it meets the angler. */
export interface WindAtPeg {
  /** `N`, `NNE`, … */
  readonly from: string;
  readonly fromDegrees: number;
  readonly meets: 'face' | 'back' | 'across from the left' | 'across from the right';
  /** Open water the wind has crossed before it reaches the peg. */
  readonly fetchMetres: number;
}

/** Sun over the float line on the fifteenth of a month, in local time. */
export interface SunAtPeg {
  readonly month: Month;
  readonly sunrise: string | null;
  readonly sunset: string | null;
  /** Spells when the sun blinds over the float line: `[["08:10", "09:40"]]`. */
  readonly inFace: readonly (readonly [string, string])[];
}

/** A claim of the record that the ground or a figure does not bear out. */
export interface AccessFinding {
  readonly what: string;
  readonly found: string;
  readonly needed: string;
  readonly source: string;
}

export interface Neighbour {
  readonly peg: PegKey;
  readonly side: 'left' | 'right';
  readonly gapMetres: number;
}

export interface PegSurvey {
  /** Eight-figure OS grid reference, null outside Great Britain. */
  readonly gridReference: string | null;
  readonly standOffs: readonly LineStandOff[];
  /** Every overhead line known about the peg: mapped, recorded or measured. */
  readonly lines: readonly LineFact[];
  readonly reach: readonly ReachTarget[];
  readonly neighbours: readonly Neighbour[];
  readonly lineDepths: readonly LineDepth[];
  readonly profile: readonly ProfilePoint[];
  readonly sun: readonly SunAtPeg[];
  readonly wind: readonly WindAtPeg[];
  /** From each car park that the drawn paths join to the peg, the shortest first. Empty where none does. */
  readonly walks: readonly Walk[];
  /**
   * The drawn paths, as `water/id`, that a way to the peg runs along: from each car park, without a step where there is one,
   * and those of its gates and rescue kit. Null where no car park is joined to it, so that the way is not known.
   */
  readonly wayPaths: readonly string[] | null;
  /** Only for a peg that claims to be accessible or step-free: what fails, or is not recorded. */
  readonly accessFindings: readonly AccessFinding[];
  readonly gates: GatesOfPeg;
  readonly nearestAed: NearbyPlace | null;
  readonly nearestThrowLine: NearbyPlace | null;
  /** Distance from the peg to the nearest water's edge. */
  readonly edgeMetres: number;
  /** False where no water lies ahead along the facing: then there is no reach, profile or line depth. */
  readonly facesWater: boolean;
}
