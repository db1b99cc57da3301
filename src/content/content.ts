import type { HourWeight } from '../domain/hour-weight.ts';
import type { League } from '../domain/league.ts';
import type { Water, WaterMap } from '../domain/map.ts';
import type { Match } from '../domain/match.ts';
import type { Notice } from '../domain/notice.ts';
import type { Peg, PegKey } from '../domain/peg.ts';
import type { BankRound, RoundEntry } from '../domain/round.ts';
import type { FishingEvent, Session } from '../domain/session.ts';
import type { GaugeReading, Sounding, VenueSettings } from '../domain/venue.ts';
import type { Cells, PlacedRow } from './read-rows.ts';
import type { FieldPath, Placed, Source } from './sources/source.ts';
import type { VenueFiles } from './venue-files.ts';

/** A water's map with the place in its file of everything drawn on it. */
export interface PlacedMap {
  readonly map: WaterMap;
  readonly source: Source;
  /** Path of the feature from which an object of the map, or a ring, was read. */
  readonly pathOf: (thing: object) => FieldPath;
}

/** The maps that could be read. */
export function mapsOf(waters: readonly PlacedWater[]): readonly { readonly map: WaterMap }[] {
  return waters.flatMap(({ map }) => (map === null ? [] : [{ map: map.map }]));
}

/** What could be read of one water. */
export interface PlacedWater {
  readonly id: string;
  readonly record: Placed<Omit<Water, 'map'>> | null;
  readonly map: PlacedMap | null;
}

export interface PlacedRound {
  readonly value: BankRound;
  readonly rows: readonly PlacedRow<RoundEntry>[];
  readonly halfRead: readonly PlacedRow<Cells>[];
}

/** Names that exist in the folder, whether or not their records can be read. */
export interface KnownNames {
  readonly waters: ReadonlySet<string>;
  readonly pegs: ReadonlySet<PegKey>;
  /** The water of every event. */
  readonly events: ReadonlyMap<string, string>;
  /** Whether events may be missing that stand in a file with faults: what names one of them may well be right. */
  readonly mayLackEvents: boolean;
  readonly notices: ReadonlySet<string>;
  readonly rounds: ReadonlySet<string>;
}

/**
 * Everything that could be read, each with its place: what the checks between records look at. A record with a fault in
 * an optional field is here without that field.
 */
export interface Content {
  readonly files: VenueFiles;
  /** The venue's own, or the shipped ones where `venue.md` cannot be read. */
  readonly settings: VenueSettings;
  /** Null where `venue.md` cannot be read. */
  readonly settingsSource: Source | null;
  /** Fields of `venue.md` that could not be read whole: what names an entry of their lists may well be right. */
  readonly unsettled: ReadonlySet<string>;
  readonly waters: readonly PlacedWater[];
  readonly pegs: readonly Placed<Peg>[];
  /** Stands no longer in the guide. */
  readonly retired: readonly Placed<Peg>[];
  readonly notices: readonly Placed<Notice>[];
  readonly matches: readonly Placed<Match>[];
  readonly leagues: readonly Placed<League>[];
  readonly rounds: readonly PlacedRound[];
  readonly events: readonly PlacedRow<FishingEvent>[];
  readonly sessions: readonly PlacedRow<Session>[];
  readonly hours: readonly PlacedRow<HourWeight>[];
  readonly soundings: readonly PlacedRow<Sounding>[];
  readonly gauge: readonly PlacedRow<GaugeReading>[];
  /** What is right in rows that have a fault. */
  readonly halfRead: Readonly<Record<'events' | 'sessions' | 'soundings', readonly PlacedRow<Cells>[]>>;
  readonly known: KnownNames;
}
