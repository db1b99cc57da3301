import type { Day } from './day.ts';

/** Fish put into a water or taken out of it. */
export interface FishMoved {
  readonly on: Day;
  /** Which fish, in the club's words: F1s of 6 oz. */
  readonly what: string;
  readonly kilograms?: number;
}

/** A day from which level zero of a water lies elsewhere: a sill was raised. */
export interface LevelChange {
  readonly on: Day;
  /** How much higher zero lies than before, negative for lower: what was plumbed before is that much deeper at today's datum. */
  readonly metres: number;
  readonly why?: string;
}

/** What has happened to a water, each list in the order of days. */
export interface WaterHistory {
  readonly stocked?: readonly FishMoved[];
  readonly netted?: readonly FishMoved[];
  readonly levelChanges?: readonly LevelChange[];
}

/** Days on which the fish of a water may have become more or fewer at one stroke, in order, each once. */
export function fishingSteps({ stocked = [], netted = [] }: WaterHistory): readonly Day[] {
  return [...new Set([...stocked, ...netted].map(({ on }) => on))].sort();
}

/** Metres to add to a depth that refers to the zero of its own day, so that it refers to today's. */
export function datumShiftSince(day: Day, { levelChanges = [] }: WaterHistory): number {
  return levelChanges.reduce((sum, { on, metres }) => (day < on ? sum + metres : sum), 0);
}
