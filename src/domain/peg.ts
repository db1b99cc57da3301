import type { MeasuredClearance } from './clearance-measures.ts';
import type { Dated } from './dated.ts';
import type { Day, Month } from './day.ts';
import type { Hazard } from './hazard.ts';
import type { KeptOpen } from './peg-verdict.ts';
import type { LatLng } from './place.ts';
import type { FormerNumber, Move, Retirement, StandId } from './stand.ts';

/** A peg's name across the venue: `kiln-pool/23`. */
export type PegKey = string;

export type PegStatus = 'open' | 'closed';

/** Makes the key of a peg from its water's id and its own. */
export function pegKey(water: string, peg: string): PegKey {
  return `${water}/${peg}`;
}

export interface Platform {
  readonly kind: string;
  readonly widthMetres?: number;
  readonly lengthMetres?: number;
  readonly heightAboveWaterMetres?: number;
  readonly condition?: string;
  /** When its condition was last looked at. */
  readonly inspectedOn?: Day;
  /** Who decided that the peg stays in the draw though its platform must not be used, and why. */
  readonly keptOpen?: KeptOpen;
  readonly railHeightMetres?: number;
  readonly edgeProtection?: boolean;
  /** Where on it the peg's position was taken; anywhere on it where the record does not say. */
  readonly measuredAt?: PlatformPart;
}

/** A part of a platform: where it meets the bank, its middle, where it ends over the water. */
export type PlatformPart = 'bank-end' | 'middle' | 'water-end';

export interface Bank {
  readonly slopeDegrees?: number;
  readonly heightMetres?: number;
  readonly surface?: string;
  readonly steps?: number;
  readonly handrail?: boolean;
}

export interface Clearance extends MeasuredClearance {
  /** When these were measured. */
  readonly measuredOn?: Day;
}

export interface Access {
  readonly stepFree?: boolean;
  readonly pathSurface?: string;
  /** The club says a wheelchair user can fish here; tested against a named scheme. */
  readonly accessible?: boolean;
}

/** What the record says lies in front of the peg, at what distance. */
export interface ReachClaim {
  /** `far-bank`, `island`, `shelf`, `reeds`, `lilies`, `aerator`, `inlet`, … */
  readonly what: string;
  readonly distanceMetres: number;
}

/** A feature of `venue.md` that a peg has, on the days given. */
export interface DatedFeature extends Dated {
  readonly id: string;
}

/** How far may be fished from a peg: a limit set in its record, or the venue's permission. */
export interface PermittedReach {
  readonly poleMetres: number;
  readonly castMetres: number;
  /** Full angle, centred on the facing. */
  readonly sectorDegrees: number;
}

export interface Photo {
  /** Path inside the venue folder's `photos/`. */
  readonly file: string;
  readonly alt: string;
  readonly credit?: string;
}

/** Free text of a peg record under one heading. */
export interface SeasonalNote {
  /** The heading as written, empty for text before the first heading. */
  readonly heading: string;
  /** Months the heading names; all twelve for `All year`, empty where the heading is no season. */
  readonly months: readonly Month[];
  readonly markdown: string;
}

/** A tape or wheel measurement from the peg to the ground below the nearest conductor. */
export interface MeasuredLineDistance {
  readonly distanceMetres: number;
  readonly measuredOn: Day;
  readonly method: string;
  /** Where that point lies, degrees clockwise from true north. */
  readonly bearingDegrees?: number;
}

export interface Peg {
  readonly water: string;
  /** As painted on the post today: `23`, `14a`. Of a retired stand, which carries no number any more, its id. */
  readonly peg: string;
  /** Where the record gives one; `standId` (stand.ts) has it always. */
  readonly id?: StandId;
  /** The day it was first fished, where it is younger than the venue. */
  readonly since?: Day;
  /** Numbers its post carried before, oldest first. */
  readonly was?: readonly FormerNumber[];
  /** Moves of its platform, oldest first. */
  readonly moved?: readonly Move[];
  /** Only of a stand outside the guide. */
  readonly retired?: Retirement;
  readonly at: LatLng;
  /** Degrees clockwise from true north. */
  readonly facingDegrees: number;
  /** Worked out from the shore as drawn: nobody wrote down which way it faces. */
  readonly isFacingEstimated?: true;
  /** One line that says where it is: "South bank, in the corner by the reed bed". */
  readonly where?: string;
  /** Those of the guide's day. */
  readonly features: readonly string[];
  /** All it ever had, where any of them has a day; `featuresOn` (stand.ts) tells those of another day. */
  readonly datedFeatures?: readonly DatedFeature[];
  readonly status: PegStatus;
  readonly statusReason?: string;
  readonly statusSince?: Day;
  /** That of the guide's day. */
  readonly platform?: Platform;
  /** All it ever had, where any of them has a day. */
  readonly datedPlatforms?: readonly (Platform & Dated)[];
  readonly bank?: Bank;
  readonly clearance?: Clearance;
  readonly access?: Access;
  /** What lies there on the guide's day. */
  readonly reach: readonly ReachClaim[];
  /** All that ever lay there, where any of it has a day. */
  readonly datedReach?: readonly (ReachClaim & Dated)[];
  readonly marginDepthMetres?: number;
  /** Only what the record limits; the venue's permission fills the rest. */
  readonly limits: Partial<PermittedReach>;
  readonly measuredLineDistance?: MeasuredLineDistance;
  readonly hazards: readonly Hazard[];
  readonly photos: readonly Photo[];
  readonly notes: readonly SeasonalNote[];
  /** The record's file inside the venue folder. */
  readonly file: string;
}
