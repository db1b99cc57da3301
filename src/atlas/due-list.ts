import { addDays, type Day, formatDay } from '../domain/day.ts';
import { type Check, checkOf } from '../domain/due.ts';
import { linesSurveyOf } from '../domain/lines-survey.ts';
import { type PegKey, pegKey } from '../domain/peg.ts';
import { pegVerdict } from '../domain/peg-verdict.ts';
import { isRescueKit, kitKnown, kitTrouble, rescueKitWords } from '../domain/rescue-kit.ts';
import type { RoundEntry } from '../domain/round.ts';
import type { Venue } from '../domain/venue.ts';
import { closedBecause } from '../domain/verdict-words.ts';
import type { Atlas } from './atlas.ts';
import type { CalendarEntry } from './feeds/icalendar.ts';
import { hazardRegister, type RegisterRow } from './hazard-register.ts';
import { factsOfPeg, type PegStanding, standingOfPeg } from './peg-verdicts.ts';

export type DueKind = 'action' | 'hazard' | 'platform' | 'clearance' | 'rescue kit' | 'overhead lines';

/** One thing that has to be looked at again. */
export interface DueItem {
  readonly kind: DueKind;
  readonly water: string;
  readonly waterName: string;
  readonly peg?: string;
  /** How its peg stands; null for what is at no peg. */
  readonly standing: PegStanding | null;
  /** The place of the map, for what is at no peg: "Lane gate". */
  readonly place?: string;
  /** What to look at: "Steep bank, the whole bank". */
  readonly what: string;
  readonly check: Check;
}

/**
 * Everything that is inspected, by the venue's intervals: each hazard in force, each platform (the last
 * round that looked at its condition: a visit is none) and clearance (the last that measured it), each throw line and
 * defibrillator; and each hazard that the club's band asks to be dealt with by a day. What was never checked comes first, then
 * by the day it falls due.
 */
export function dueList(atlas: Atlas): readonly DueItem[] {
  const { venue } = atlas;
  const { inspection } = venue.settings;
  const names = new Map(venue.waters.map((water) => [water.id, water.name]));
  const inspected = lastDays(venue, ({ platform }) => platform !== undefined);
  const measured = lastDays(venue, ({ entry }) => entry === 'clearance' || entry === 'cut');
  const { inForce } = hazardRegister(atlas);
  const at = ({ water, waterName, peg, where, ofPeg }: RegisterRow) => ({
    water,
    waterName,
    standing: ofPeg?.standing ?? null,
    ...(peg === undefined ? (where === waterName ? {} : { place: where.slice(waterName.length + 2) }) : { peg }),
  });
  const hazards = inForce.map((row): DueItem => {
    const what = `${row.kind.name}, ${row.hazard.place}`;
    return { ...at(row), kind: 'hazard', what, check: row.check };
  });
  const actions = inForce.flatMap((row): readonly DueItem[] => {
    if (row.actBy === null) return [];
    const { on, since, withinDays, band } = row.actBy;
    const what = `Deal with: ${row.kind.name}, ${row.hazard.place} (${band})`;
    return [{ ...at(row), kind: 'action', what, check: { checkedOn: since, dueOn: on, intervalDays: withinDays } }];
  });
  const pegs = venue.pegs.flatMap((peg): readonly DueItem[] => {
    const key = pegKey(peg.water, peg.peg);
    const at = {
      water: peg.water,
      waterName: names.get(peg.water) ?? peg.water,
      peg: peg.peg,
      standing: standingOfPeg(atlas, peg),
    };
    const clearanceDay = latest(measured.get(key), peg.clearance?.measuredOn);
    return [
      ...(peg.platform === undefined
        ? []
        : [
            {
              ...at,
              kind: 'platform' as const,
              what: `Platform, ${peg.platform.kind}`,
              check: checkOf(latest(inspected.get(key), peg.platform.inspectedOn), undefined, inspection.platformDays),
            },
          ]),
      {
        ...at,
        kind: 'clearance' as const,
        what: 'Clear width, branches, path',
        check: checkOf(clearanceDay, undefined, inspection.clearanceDays),
      },
    ];
  });
  const kit = venue.waters.flatMap((water) =>
    water.map.places.filter(isRescueKit).map((place): DueItem => {
      const { checkedOn, state } = kitKnown(place, water, venue.rounds);
      const trouble = kitTrouble(state);
      return {
        kind: 'rescue kit',
        water: water.id,
        waterName: water.name,
        standing: null,
        what: [rescueKitWords(place), trouble].filter((part) => part !== null).join(', '),
        check: checkOf(checkedOn ?? undefined, undefined, inspection.rescueKitDays),
      };
    }),
  );
  const lines = venue.waters.map((water): DueItem => {
    const survey = linesSurveyOf(water, venue.settings);
    return {
      kind: 'overhead lines',
      water: water.id,
      waterName: water.name,
      standing: null,
      what: 'Overhead lines: is the map still right?',
      check: checkOf(survey?.on, undefined, inspection.linesDays),
    };
  });
  return [...actions, ...hazards, ...pegs, ...kit, ...lines].sort((a, b) =>
    (a.check.dueOn ?? '').localeCompare(b.check.dueOn ?? ''),
  );
}

/** Checks of one kind at one place that were made together and fall due together: one line of the list. */
export interface DueRow extends Omit<DueItem, 'what'> {
  readonly what: readonly string[];
}

/** The list with a line for each peg, kind and pair of days, in the same order: a bailiff looks at a peg once. */
export function dueRows(items: readonly DueItem[]): readonly DueRow[] {
  const together = Map.groupBy(items, ({ water, peg, place, kind, check }) =>
    JSON.stringify([water, peg, place, kind, check.checkedOn, check.dueOn]),
  );
  return [...together.values()].map((group) => ({ ...group[0]!, what: group.map(({ what }) => what) }));
}

/** Days ahead that a bailiff plans a round for. */
const SOON_DAYS = 28;

/** The list in two: what is due by four weeks after a day or was never checked, and what comes later. */
export function dueSoonAndLater(
  items: readonly DueItem[],
  day: Day,
): { readonly soon: readonly DueItem[]; readonly later: readonly DueItem[]; readonly until: Day } {
  const until = addDays(day, SOON_DAYS);
  const isSoon = (item: DueItem) => item.check.dueOn === null || item.check.dueOn <= until;
  return { soon: items.filter(isSoon), later: items.filter((item) => !isSoon(item)), until };
}

/**
 * The due days as calendar entries: one for each peg or place and kind of check, on the first day one of them falls due;
 * what was never checked falls on the guide's day. The id names the place and the kind alone: once checked, the entry moves.
 * Each says where its peg is closed on that day.
 * @param owner keeps the entries of two clubs apart in one calendar
 * @param pageUrl the page of what is due, as a full address; null where the guide does not know its own
 */
export function dueCalendar(
  atlas: Atlas,
  items: readonly DueItem[],
  owner: string,
  pageUrl: string | null,
): readonly CalendarEntry[] {
  const { guideDay } = atlas.venue.settings;
  const dayOf = ({ check }: DueItem) => check.dueOn ?? guideDay;
  const groups = Map.groupBy(items, ({ kind, water, peg, place }) =>
    [kind, water, ...(peg === undefined ? ['place', place ?? ''] : ['peg', peg])].map(encodeURIComponent).join('/'),
  );
  return [...groups].map(([id, group]) => {
    const first = group[0]!;
    const where = [first.waterName, first.peg ?? first.place].filter((part) => part !== undefined).join(' ');
    const count = group.length === 1 ? '1 check' : `${group.length} checks`;
    const day = group.map(dayOf).sort()[0] as Day;
    return {
      uid: `${id}@${owner}`,
      day,
      summary: `${where}: ${count} due, ${first.kind}`,
      description: [
        ...group.map(
          (item) => `${item.what}: ${item.check.dueOn === null ? 'never checked' : formatDay(item.check.dueOn)}`,
        ),
        ...closedLine(atlas, first, [day, guideDay].sort().at(-1) as Day),
      ].join('\n'),
      ...(pageUrl === null ? {} : { url: pageUrl }),
    };
  });
}

/** What closes the peg of an entry on its day, as far as is known on the day of the guide. */
function closedLine(atlas: Atlas, { water, peg }: DueItem, day: Day): readonly string[] {
  const record = peg === undefined ? undefined : atlas.pegsByKey.get(pegKey(water, peg));
  if (record === undefined) return [];
  const verdict = pegVerdict(factsOfPeg(atlas, record), day);
  return verdict.state === 'closed' ? [`The peg is closed ${closedBecause(verdict)}`] : [];
}

/** The last day on which a row of a round told something of each peg. */
function lastDays(venue: Venue, tells: (entry: RoundEntry) => boolean): ReadonlyMap<PegKey, Day> {
  const days = new Map<PegKey, Day>();
  for (const round of venue.rounds) {
    for (const entry of round.entries) {
      if (entry.peg === undefined || !tells(entry)) continue;
      const key = pegKey(entry.water, entry.peg);
      const last = latest(days.get(key), entry.day ?? round.day);
      if (last !== undefined) days.set(key, last);
    }
  }
  return days;
}

function latest(a: Day | undefined, b: Day | undefined): Day | undefined {
  if (a === undefined || b === undefined) return a ?? b;
  return a > b ? a : b;
}
