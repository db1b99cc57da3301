import type { BagPart, Units } from '../../domain/bag.ts';
import { type Day, yearOf } from '../../domain/day.ts';
import { fedCell } from '../../domain/fed.ts';
import { areFarApart } from '../../domain/hour-weight.ts';
import type { FishingEvent } from '../../domain/session.ts';
import { formatWeight } from '../../domain/weight.ts';
import { type Slip, slipGrams } from '../../match-day/slip.ts';
import { LogTable } from '../papers/log-table.ts';
import { type DepthCheck, putDepths } from './slip-depths.ts';
import { putHours } from './slip-hours.ts';
import type { StagedFiles } from './staged-files.ts';
import { writtenWeight } from './written-weight.ts';

/** What the log knows where slips go. */
export interface SlipLog {
  readonly venue: string;
  readonly units: Units;
  readonly bagParts: readonly BagPart[];
  readonly events: readonly FishingEvent[];
  /** The numbers on the posts of a water; empty where there is no such water. */
  readonly pegsOf: (water: string) => readonly string[];
  /** Sessions of an event: the number of its day, and what the scales said. */
  readonly sessionsOf: (event: string) => readonly { readonly peg: string; readonly weightGrams?: number }[];
  /** No slip is of a later day; null where the venue is invented, whose days are too. */
  readonly latestDay: Day | null;
  /** Null where no slip has depths. */
  readonly depths: DepthCheck | null;
}

/** What a slip does to the log, in lines; or why it cannot go in. */
export type SlipPlan =
  | { readonly ok: true; readonly told: readonly string[] }
  | { readonly ok: false; readonly why: string };

const EVENT_COLUMNS = ['event', 'date', 'water', 'kind', 'hours', 'listing', 'frame_places'];
const SESSION_COLUMNS = ['event', 'section', 'peg', 'angler', 'status', 'weight'];

/**
 * Puts a slip into the log: of a match it fills spot, method, bait, lines and feed of its row and changes no weight; of a chosen
 * peg it becomes a session of its own; when the fish came goes into `hours.csv` of either, what was plumbed into the water's
 * soundings. The same slip again adds nothing.
 */
export function planSlip(slip: Slip, log: SlipLog, files: StagedFiles): SlipPlan {
  if (slip.venue !== log.venue) {
    return { ok: false, why: `It is of ${slip.venue}; this folder is ${log.venue}.` };
  }
  if (log.latestDay !== null && slip.day > log.latestDay) {
    return { ok: false, why: `It is of ${slip.day}, a day that has not come: is the clock of that phone right?` };
  }
  if (!log.pegsOf(slip.water).includes(slip.peg)) {
    return { ok: false, why: `It is of peg ${slip.peg} of ${slip.water}, which this folder does not have.` };
  }
  const strange = [...slipGrams(slip).keys()].filter((part) => !log.bagParts.some(({ id }) => id === part));
  if (strange.length > 0) {
    return { ok: false, why: `It has weights of ${strange.join(', ')}, which is no part of a bag here.` };
  }
  const match = log.events.find(({ day, water, kind }) => kind === 'match' && day === slip.day && water === slip.water);
  if (match !== undefined && log.sessionsOf(match.id).some(({ peg }) => peg === slip.peg)) {
    return withDepths(matchRow(slip, match, log, files), slip, log, files);
  }
  if (slip.match !== null) {
    return {
      ok: false,
      why: `It is of the match ${slip.match}, and the log has no row of peg ${slip.peg} on ${slip.day}: take in the match day first.`,
    };
  }
  return withDepths(chosenRow(slip, log, files), slip, log, files);
}

function withDepths(plan: SlipPlan, slip: Slip, { depths, units }: SlipLog, files: StagedFiles): SlipPlan {
  if (!plan.ok || depths === null) return plan;
  return { ok: true, told: [...plan.told, ...putDepths(slip, depths, units, files)] };
}

function matchRow(slip: Slip, event: FishingEvent, log: SlipLog, files: StagedFiles): SlipPlan {
  const path = `sessions/${yearOf(slip.day)}/sessions.csv`;
  const table = new LogTable(files.text(path), SESSION_COLUMNS);
  const isRow = (row: Readonly<Record<string, string>>) => row.event === event.id && row.peg === slip.peg;
  const rows = table.rows().filter(isRow);
  const [before] = rows;
  if (before === undefined || rows.length > 1) {
    return {
      ok: false,
      why: `The log has ${rows.length} rows of peg ${slip.peg} in ${event.id}: whose slip this is cannot be told.`,
    };
  }
  const cells = wordsOf(slip);
  const changed = Object.keys(cells).filter((column) => (before[column] ?? '') !== cells[column]);
  const told = changed.map((column) => {
    const was = before[column] ?? '';
    return `${event.id}, peg ${slip.peg}: ${column} ${was === '' ? '' : `“${was}” becomes `}“${cells[column]}”`;
  });
  if (changed.length > 0) {
    table.need(Object.keys(cells));
    table.replace(isRow, [{ ...before, ...cells }]);
    files.put(path, table.text());
  }
  const hours = putHours(slip, { event: event.id, hours: event.hours, slip: '' }, log.units, files);
  const weighed = log.sessionsOf(event.id).find(({ peg }) => peg === slip.peg)?.weightGrams;
  return { ok: true, told: [...told, ...hours, ...temperatureLeftOut(slip, event), ...farApart(slip, weighed, log)] };
}

/** A match's row has no column for the water's temperature, and one angler's reading is not the match's: it is said and left. */
function temperatureLeftOut(slip: Slip, event: FishingEvent): readonly string[] {
  if (slip.waterDegreesC === null) return [];
  return [
    `Peg ${slip.peg}: the slip gives the water ${slip.waterDegreesC} °C, which is not taken into the log of a match. If it stands for the match, write it as water_temperature of ${event.id}.`,
  ];
}

/** What the slip comes to against the scales: far apart, it may be of another peg or day. The scales' weight stands. */
function farApart(slip: Slip, weighed: number | undefined, { units }: SlipLog): readonly string[] {
  const own = totalOf(slip);
  if (weighed === undefined || own === 0) return [];
  if (!areFarApart(own, weighed)) return [];
  return [
    `Peg ${slip.peg}: the slip comes to ${formatWeight(own, units)} and the scales to ${formatWeight(weighed, units)}. Is it of this peg? The scales’ weight stays.`,
  ];
}

function chosenRow(slip: Slip, log: SlipLog, files: StagedFiles): SlipPlan {
  const path = `sessions/${yearOf(slip.day)}/sessions.csv`;
  const day = putChosenDay(slip, log, files);
  const sessions = new LogTable(files.text(path), SESSION_COLUMNS);
  // A peg may be used twice in a day: only the same slip, sent again, takes the place of what it wrote.
  const slipRef = slip.id ?? '';
  const isRow = (row: Readonly<Record<string, string>>) =>
    row.event === day.id && row.peg === slip.peg && (row.slip ?? '') === slipRef;
  const grams = totalOf(slip);
  const weight = (of: number) => writtenWeight(of, log.units.weight);
  const cells: Record<string, string> = {
    event: day.id,
    peg: slip.peg,
    status: grams === 0 ? 'blank' : 'weighed',
    weight: grams === 0 ? '' : weight(grams),
    ...Object.fromEntries([...slipGrams(slip)].map(([part, of]) => [`${part}_weight`, weight(of)])),
    ...wordsOf(slip),
    ...(slipRef === '' ? {} : { slip: slipRef }),
  };
  const before = sessions.rows().find(isRow);
  const hours = putHours(slip, { event: day.id, hours: day.hours, slip: slipRef }, log.units, files);
  const told = [...day.told, ...hours];
  const isSame = before !== undefined && Object.keys(cells).every((column) => (before[column] ?? '') === cells[column]);
  if (isSame) return { ok: true, told };
  sessions.need(Object.keys(cells));
  sessions.replace(isRow, [cells]);
  files.put(path, sessions.text());
  const what = grams === 0 ? 'blank' : formatWeight(grams, log.units);
  return {
    ok: true,
    told: [
      `${day.id}${day.isNew ? ', new' : ''}, peg ${slip.peg}: ${what}${before === undefined ? '' : ', in place of another slip'}`,
      ...told,
    ],
  };
}

/** The event of those who chose a peg of a water on a day. */
interface ChosenDay {
  readonly id: string;
  readonly hours: number;
  readonly isNew: boolean;
  readonly told: readonly string[];
}

/** Writes that event where there is none. It is as long as the longest stay: else the last hours of a slip lay outside of it. */
function putChosenDay({ day, water, hours, waterDegreesC }: Slip, log: SlipLog, files: StagedFiles): ChosenDay {
  const path = `sessions/${yearOf(day)}/events.csv`;
  const known = log.events.find((event) => event.kind === 'pleasure' && event.day === day && event.water === water);
  const id = known?.id ?? `${day}-${water}-pleasure`;
  const events = new LogTable(files.text(path), EVENT_COLUMNS);
  const isEvent = (row: Readonly<Record<string, string>>) => row.event === id;
  const before = events.rows().find(isEvent);
  const longest = Math.max(hours, Number(before?.hours ?? 0));
  if (before !== undefined && longest === Number(before.hours)) return { id, hours: longest, isNew: false, told: [] };
  const degrees = waterDegreesC === null ? {} : { water_temperature: String(waterDegreesC) };
  const fresh = { event: id, date: day, water, kind: 'pleasure', listing: 'full', frame_places: '0', ...degrees };
  if (before === undefined) events.need([...EVENT_COLUMNS, ...Object.keys(degrees)]);
  events.replace(isEvent, [{ ...(before ?? fresh), hours: String(longest) }]);
  files.put(path, events.text());
  const told = before === undefined ? [] : [`${id}: hours “${before.hours}” becomes “${longest}”`];
  return { id, hours: longest, isNew: before === undefined, told };
}

/** The words that the slip says, by column; what it leaves open stays as the log has it. */
function wordsOf({ spot, method, bait, lines, fed }: Slip): Record<string, string> {
  const said = { spot, method, bait, lines: lines === null ? '' : String(lines), fed: fedCell(fed) };
  return Object.fromEntries(
    Object.entries(said).flatMap(([column, text]) => (text.trim() === '' ? [] : [[column, text.trim()]])),
  );
}

function totalOf(slip: Slip): number {
  return [...slipGrams(slip).values()].reduce((sum, grams) => sum + grams, 0);
}
