import type { Day } from '../domain/day.ts';
import type { Venue } from '../domain/venue.ts';
import { checkContent } from './checks/check-content.ts';
import { checkGuideDayAhead } from './checks/guide-day-ahead.ts';
import type { Content } from './content.ts';
import type { Fault, LeftOut } from './fault.ts';
import { readContent } from './read-content.ts';
import { compareNaturally, type VenueFiles } from './venue-files.ts';
import { withKitChecks } from './with-kit-checks.ts';

/** How many of each thing were read. */
export interface VenueCounts {
  readonly files: number;
  readonly waters: number;
  readonly pegs: number;
  readonly events: number;
  readonly sessions: number;
  readonly soundings: number;
  readonly gaugeReadings: number;
  readonly notices: number;
  readonly rounds: number;
  readonly photos: number;
}

export interface VenueRead {
  /** Null where any fault is an error. */
  readonly venue: Venue | null;
  /** In the order of files and lines. */
  readonly faults: readonly Fault[];
  readonly leftOut: readonly LeftOut[];
  readonly counts: VenueCounts;
  /** Every record, log and map as it was read, by path: what shows a file's own words asks for no second reading. */
  readonly texts: ReadonlyMap<string, string>;
}

/** Told what was done last. */
export type Progress = (what: string) => void;

/**
 * Reads a venue folder that is in memory, and checks it: every fault of one run, in a stable order. Bare numbers take the
 * units `venue.md` declares. Never throws for what is in the files.
 * @param today to warn of a guide's day that has not come; left out where no clock counts
 */
export function readVenue(files: VenueFiles, today?: Day, progress: Progress = () => undefined): VenueRead {
  const { value: content, faults: readFaults, leftOut } = readContent(files, progress);
  // Where nothing was read at all one fault says it, and the many that would follow say nothing.
  const isNothing = files.faults.some(({ rule }) => rule.startsWith('folder-'));
  const faults = isNothing
    ? files.faults
    : [...files.faults, ...readFaults, ...checkContent(content, progress), ...checkGuideDayAhead(content, today)];
  const isClean = content.settingsSource !== null && faults.every(({ severity }) => severity === 'warning');
  return {
    venue: isClean ? venueOf(content) : null,
    faults: [...faults].sort(comparePlaces),
    leftOut: [...files.leftOut, ...leftOut].sort(comparePlaces),
    counts: countsOf(content),
    texts: files.texts,
  };
}

function venueOf(content: Content): Venue {
  const values = <T>(placed: readonly { readonly value: T }[]): readonly T[] => placed.map(({ value }) => value);
  const rounds = values(content.rounds);
  return {
    settings: content.settings,
    waters: content.waters.flatMap(({ record, map }) =>
      record === null || map === null ? [] : [withKitChecks({ ...record.value, map: map.map }, rounds)],
    ),
    pegs: values(content.pegs),
    ...(content.retired.length === 0 ? {} : { retired: values(content.retired) }),
    events: values(content.events),
    sessions: values(content.sessions),
    ...(content.hours.length === 0 ? {} : { hours: values(content.hours) }),
    notices: values(content.notices),
    ...(content.leagues.length === 0 ? {} : { leagues: values(content.leagues) }),
    ...(content.matches.length === 0 ? {} : { matches: values(content.matches) }),
    rounds,
    soundings: values(content.soundings),
    gauge: values(content.gauge),
  };
}

function countsOf(content: Content): VenueCounts {
  return {
    files: content.files.texts.size,
    waters: content.waters.length,
    pegs: content.pegs.length,
    events: content.events.length,
    sessions: content.sessions.length,
    soundings: content.soundings.length,
    gaugeReadings: content.gauge.length,
    notices: content.notices.length,
    rounds: content.rounds.length,
    photos: content.files.photos.size,
  };
}

interface Placed {
  readonly file: string;
  readonly line: number;
  readonly column?: number;
}

function comparePlaces(a: Placed, b: Placed): number {
  if (a.file !== b.file) return compareNaturally(a.file, b.file);
  return a.line - b.line || (a.column ?? 0) - (b.column ?? 0);
}
