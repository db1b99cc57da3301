import type { AreaKind, MapPlace } from '../../../src/domain/map.ts';
import type { WaterClimate } from '../log/weather.ts';
import type { Bed } from './bed.ts';
import type { SpotRing } from './ring.ts';
import type { Spot } from './spot.ts';

/** A patch of a drawing. */
export interface DrawnArea {
  readonly id: string;
  readonly kind: AreaKind;
  readonly name?: string;
  readonly ring: SpotRing;
}

/** A thing at one spot of a drawing. */
export interface DrawnPlace extends Omit<MapPlace, 'at'> {
  readonly at: Spot;
}

/** A path of a drawing, with what a club knows of it. */
export interface DrawnPath {
  readonly id: string;
  readonly name: string;
  readonly line: readonly Spot[];
  readonly surface: string;
  readonly widthMetres: number;
  readonly steps?: number;
  readonly gradient?: number;
  readonly stepFree?: boolean;
}

/** An overhead line of a drawing. */
export interface DrawnLine {
  readonly id: string;
  readonly name: string;
  readonly line: readonly Spot[];
  readonly voltageVolts?: number;
  readonly heightMetres?: number;
  readonly conductorSpreadMetres?: number;
}

/** What the banks of a water are like, for the pegs' records. */
export interface BankCharacter {
  /** Usual slopes, as 1 up per so many along. */
  readonly slopes: readonly number[];
  readonly heightMetres: readonly [low: number, high: number];
  readonly surfaces: readonly string[];
  readonly platforms: readonly string[];
  readonly platformHeightMetres: readonly [low: number, high: number];
  /** Share of pegs that can be reached and fished without a step. */
  readonly stepFreeShare: number;
}

/** One water as drawn, in metres from the venue's origin, before it becomes positions. */
export interface DrawnWater {
  readonly id: string;
  readonly name: string;
  readonly kind: string;
  readonly datum: string;
  readonly closeSeason: string;
  readonly access: string;
  readonly notesMarkdown: string;
  readonly outline: SpotRing;
  readonly islands: readonly { readonly id: string; readonly name: string; readonly ring: SpotRing }[];
  readonly areas: readonly DrawnArea[];
  readonly places: readonly DrawnPlace[];
  readonly paths: readonly DrawnPath[];
  readonly overheadLines: readonly DrawnLine[];
  readonly bank: BankCharacter;
  readonly climate: WaterClimate;
  readonly bed: Bed;
  /** Bays, which the turn of the bank alone does not tell. */
  readonly bays: readonly { readonly at: Spot; readonly radiusMetres: number }[];
  /** Names of the banks, each up to its last peg; the compass names what is left. */
  readonly banks: readonly { readonly lastPeg: number; readonly name: string }[];
  /** Where the pegs stand, in metres round the outline. */
  readonly pegsAlong: readonly number[];
  /** How far the pegs stand back from the water's edge. */
  readonly setBackMetres: number;
}
