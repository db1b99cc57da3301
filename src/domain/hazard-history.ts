import type { Day } from './day.ts';
import type { Hazard, RiskLevel } from './hazard.ts';
import type { BankRound, RoundEntry } from './round.ts';

/** What happened to a hazard, in the order in which it happens to one. */
const DEEDS = ['found', 'checked', 'worsened', 'controlled', 'kept open', 'cleared'] as const;

export type HazardDeed = (typeof DEEDS)[number];

/** One line of a hazard's history. Roles and rounds, never names. */
export interface HazardEvent {
  readonly did: HazardDeed;
  readonly on: Day;
  /** The role that did or decided it. */
  readonly by?: string;
  readonly round?: string;
  readonly severity?: RiskLevel;
  readonly likelihood?: RiskLevel;
  /** Why it was decided, or what was done. */
  readonly words?: string;
}

/** Where a hazard is: at a peg, at a place of the water's map, or of the whole water where neither is given. */
export interface HazardWhere {
  readonly water: string;
  readonly peg?: string;
  readonly mappedAs?: string;
}

const DEED_OF: Partial<Record<RoundEntry['entry'], HazardDeed>> = {
  'hazard-found': 'found',
  'hazard-checked': 'checked',
  'hazard-worsened': 'worsened',
  'hazard-controlled': 'controlled',
  'hazard-cleared': 'cleared',
};

/**
 * The history of one hazard, oldest first: what the rounds say of it and what its record says beyond them. A deed told by
 * both is one; a kind found again at the same place after it was cleared is another hazard with a history of its own.
 */
export function hazardHistory(
  hazard: Hazard,
  where: HazardWhere,
  rounds: readonly BankRound[],
): readonly HazardEvent[] {
  const told = rounds.flatMap((round) =>
    round.entries.flatMap((entry) => (isOfHazard(entry, hazard, where) ? eventsOf(entry, round, hazard) : [])),
  );
  const own = recordEvents(hazard).filter((event) => !told.some((other) => sameDeed(event, other)));
  // The record knows the role and the reason where an older round has no room for them.
  const all = [...told.map((event) => ({ ...matching(recordEvents(hazard), event), ...event })), ...own];
  return uniqueDeeds(all).sort((a, b) => a.on.localeCompare(b.on) || DEEDS.indexOf(a.did) - DEEDS.indexOf(b.did));
}

function isOfHazard(entry: RoundEntry, hazard: Hazard, { water, peg, mappedAs }: HazardWhere): boolean {
  if (entry.water !== water || entry.peg !== peg || entry.mappedAs !== mappedAs || entry.hazard !== hazard.kind) {
    return false;
  }
  if (entry.foundOn !== undefined && entry.foundOn !== hazard.foundOn) return false;
  return entry.place === undefined || plain(entry.place) === plain(hazard.place);
}

function eventsOf(entry: RoundEntry, round: BankRound, { foundOn, clearedOn }: Hazard): readonly HazardEvent[] {
  const did = DEED_OF[entry.entry];
  const on = entry.day ?? round.day;
  if (did === undefined || on < foundOn || (clearedOn !== undefined && on > clearedOn)) return [];
  const words = did === 'controlled' ? entry.control : entry.why;
  return [
    {
      // Found once: a second finding of what is known is a look at it.
      did: did === 'found' && on > foundOn ? 'checked' : did,
      on,
      round: round.ref,
      ...(entry.by === undefined ? {} : { by: entry.by }),
      ...(entry.severity === undefined ? {} : { severity: entry.severity }),
      ...(entry.likelihood === undefined ? {} : { likelihood: entry.likelihood }),
      ...(words === undefined ? {} : { words }),
    },
  ];
}

function recordEvents(hazard: Hazard): readonly HazardEvent[] {
  const { foundOn, foundBy, round, checkedOn, worsenedOn, controlledOn, control, keptOpen } = hazard;
  const { clearedOn, clearedBy, clearedWhy } = hazard;
  const event = (did: HazardDeed, on: Day | undefined, by?: string, words?: string): HazardEvent[] =>
    on === undefined
      ? []
      : [{ did, on, ...(by === undefined ? {} : { by }), ...(words === undefined ? {} : { words }) }];
  return [
    ...event('found', foundOn, foundBy).map((found) => (round === undefined ? found : { ...found, round })),
    ...(checkedOn === foundOn ? [] : event('checked', checkedOn)),
    ...event('worsened', worsenedOn),
    ...event('controlled', controlledOn, undefined, control),
    ...event('kept open', keptOpen?.on, keptOpen?.by, keptOpen?.why),
    ...event('cleared', clearedOn, clearedBy, clearedWhy),
  ];
}

function matching(events: readonly HazardEvent[], event: HazardEvent): HazardEvent | undefined {
  return events.find((other) => sameDeed(other, event));
}

function sameDeed(a: HazardEvent, b: HazardEvent): boolean {
  return a.did === b.did && a.on === b.on;
}

function uniqueDeeds(events: readonly HazardEvent[]): HazardEvent[] {
  // Found and worse are looks too: a bare look of the same day says nothing more.
  const isBareLook = (event: HazardEvent) =>
    event.did === 'checked' &&
    events.some(
      (other) => other !== event && other.on === event.on && other.did !== 'cleared' && other.did !== 'checked',
    );
  return events.filter(
    (event, index) => events.findIndex((other) => sameDeed(other, event)) === index && !isBareLook(event),
  );
}

function plain(place: string): string {
  return place.trim().toLowerCase();
}
