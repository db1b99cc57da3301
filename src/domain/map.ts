import type { Day } from './day.ts';
import type { PlaceHazard } from './hazard.ts';
import type { LinesSurvey } from './lines-survey.ts';
import type { LatLng, Ring } from './place.ts';
import type { WaterHistory } from './water-history.ts';

/** An overhead electric line, mapped along its centre. */
export interface OverheadLine {
  readonly id: string;
  readonly name: string;
  readonly line: readonly LatLng[];
  /** Unknown where left out, and then treated as the highest. */
  readonly voltageVolts?: number;
  /** Explains only: a height never makes a peg safe. */
  readonly heightMetres?: number;
  /** Full width between the outermost conductors; the venue's figure where left out. */
  readonly conductorSpreadMetres?: number;
}

/** A path on the ground, walked in either direction. `gradient` and `steps` are of the whole path as drawn. */
export interface MapPath {
  readonly id: string;
  readonly name?: string;
  readonly line: readonly LatLng[];
  readonly surface?: string;
  readonly widthMetres?: number;
  readonly steps?: number;
  /** Steepest rise over run on it, 0.05 for 1 in 20. */
  readonly gradient?: number;
  readonly stepFree?: boolean;
}

export type PlaceKind =
  | 'car-park'
  | 'gate'
  | 'aed'
  | 'throw-line'
  | 'lodge'
  | 'toilet'
  | 'aerator'
  | 'inlet'
  | 'outlet'
  | 'gauge';

/** When a gate is locked. */
export type GateLock = 'no' | 'night' | 'always';

/** A thing at one point of the map. */
export interface MapPlace {
  readonly id: string;
  readonly kind: PlaceKind;
  readonly name: string;
  readonly at: LatLng;
  readonly note?: string;
  readonly checkedOn?: Day;
  /** Of rescue kit: how it was when it was last looked at, where that was not in its place and whole. */
  readonly kit?: 'damaged' | 'missing';
  /** For a gate: a vehicle can drive in here. */
  readonly vehicles?: boolean;
  /** For a gate: when it is locked; not known where left out. */
  readonly locked?: GateLock;
  /** For a gate: who opens it when it is locked. A role of the venue's contacts, never a name. */
  readonly openedBy?: string;
  /** For a gate: an ambulance can drive in here; as `vehicles` says where left out. */
  readonly ambulance?: boolean;
  /** For a gate: its opening hours, in the club's words. */
  readonly hours?: string;
}

export type AreaKind = 'reeds' | 'lilies' | 'trees' | 'snag' | 'building';

/** A patch of the map. */
export interface MapArea {
  readonly id: string;
  readonly kind: AreaKind;
  readonly name?: string;
  readonly ring: Ring;
}

/** Everything drawn for one water. */
export interface WaterMap {
  readonly outline: Ring;
  readonly islands: readonly {
    readonly id: string;
    readonly name?: string;
    readonly ring: Ring;
  }[];
  readonly overheadLines: readonly OverheadLine[];
  readonly paths: readonly MapPath[];
  readonly places: readonly MapPlace[];
  readonly areas: readonly MapArea[];
}

/** One water of the venue. */
export interface Water extends WaterHistory {
  readonly id: string;
  readonly name: string;
  /** In the trade's words: snaky pit, clay pit, match lake, … */
  readonly kind: string;
  /** What level zero is, in words: "top of the monk sill". Levels and depths refer to it. */
  readonly datum: string;
  /** `none`, `statutory`, `club` or, unless the venue says, `unknown`. */
  readonly closeSeason: string;
  readonly access?: string;
  /** Where it differs from the venue's own. */
  readonly linesSurveyed?: LinesSurvey;
  readonly notesMarkdown: string;
  /** Hazards that are at none of its pegs; left out where none was ever recorded. */
  readonly hazards?: readonly PlaceHazard[];
  readonly map: WaterMap;
}
