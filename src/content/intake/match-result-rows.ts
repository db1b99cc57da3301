import type { Units } from '../../domain/bag.ts';
import { hoursFished, type Match } from '../../domain/match.ts';
import type { VenueSettings } from '../../domain/venue.ts';
import { entriesOf, holdersOf } from '../../match-day/entries.ts';
import { agreedValue, conflictsOf, type Note, standingNotes } from '../../match-day/match-log.ts';
import { ABOUT, movedPeg, type OnScales, onScales, partGrams, totalGrams } from '../../match-day/scales.ts';
import type { ResultMatch, ResultRow } from '../papers/results/result-row.ts';
import { writtenWeight } from './written-weight.ts';

/** A match day understood as rows of the log, or why it is not. */
export type MatchResultsRead =
  | { readonly ok: true; readonly match: ResultMatch; readonly told: readonly string[] }
  | { readonly ok: false; readonly lines: readonly string[] };

/** Hours of a match whose file does not say when it begins and ends (common practice, no source). */
const USUAL_HOURS = 5;

/**
 * The rows of the log that a match day's notes say. What two phones say differently is refused, with both: it is settled on a
 * phone, not here. A peg that never came to the scales is told and left out: nothing is made up for it.
 * @param hours those of the water's last match, where the match's file gives none
 */
export function matchResultRows(
  match: Match,
  notes: readonly Note[],
  { units, bagParts }: Pick<VenueSettings, 'units' | 'bagParts'>,
  file: string,
  hours = USUAL_HOURS,
): MatchResultsRead {
  const standing = standingNotes(notes);
  const differing = conflictsOf(standing);
  if (differing.length > 0) {
    return {
      ok: false,
      lines: differing.map(
        ({ about, notes: both }) =>
          `${file}: two phones say different things of ${about}: ${both.map(({ value, at }) => `${JSON.stringify(value)} (${at})`).join(' and ')}. Settle it on a phone (its page asks at the top) and hand over again.`,
      ),
    };
  }
  const known = new Set(match.plan.flatMap(({ pegs }) => pegs));
  const strange = [...standing.keys()].filter((about) => about.startsWith('scales ') && !known.has(about.slice(7)));
  if (strange.length > 0) {
    return {
      ok: false,
      lines: strange.map(
        (about) =>
          `${file}: ${about.slice(7)} was weighed and is not in the plan of ${match.id}. Put it into a section of matches/${match.id}.md, or take it out on the phone.`,
      ),
    };
  }
  const partIds = bagParts.flatMap(({ id, since }) => (since === undefined || since <= match.day ? [id] : []));
  const foreign = new Set([...standing].flatMap(([about, [note]]) => partsNamed(about, note?.value)));
  for (const id of partIds) foreign.delete(id);
  if (foreign.size > 0) {
    return {
      ok: false,
      lines: [
        `${file}: fish were weighed or counted as ${[...foreign].join(', ')}, which is no part of a bag here on that day. Parts are in venue.md (bag-parts).`,
      ],
    };
  }
  const holders = holdersOf(entriesOf(standing));
  const shared = [...holders].filter(([, entries]) => entries.length > 1).map(([peg]) => peg);
  if (shared.length > 0) {
    return {
      ok: false,
      lines: [
        `${file}: ${shared.join(', ')} was given to two entries, on two phones. Give one of them another peg, or let them withdraw, on a phone (Draw), and hand over again.`,
      ],
    };
  }
  const rows: ResultRow[] = [];
  const missing: string[] = [];
  const mixed: string[] = [];
  for (const section of match.plan) {
    for (const planned of section.pegs) {
      const said = onScales(agreedValue(standing, ABOUT.scales(planned)));
      if (said === null) {
        missing.push(planned);
        continue;
      }
      const key = movedPeg(agreedValue(standing, ABOUT.moved(planned)))?.to ?? planned;
      const grams = totalGrams(said);
      if (said.nets.some(({ part }) => part !== null) && partGrams(said, partIds) === null) mixed.push(planned);
      rows.push({
        water: key.slice(0, key.indexOf('/')),
        peg: key.slice(key.indexOf('/') + 1),
        section: section.name,
        name: holders.get(planned)?.[0]?.name ?? '',
        status: said.status,
        weight: said.status === 'weighed' ? { grams, written: writtenWeight(grams, units.weight) } : null,
        parts: partsOf(said, notesOf(notes, planned), partIds, units),
        position: null,
        place: file,
      });
    }
  }
  if (rows.length === 0) return { ok: false, lines: [`${file}: no peg of it has been to the scales.`] };
  const fished = rows.filter(({ status }) => status !== 'absent').length;
  return {
    ok: true,
    match: {
      file,
      day: match.day,
      rows,
      listing: 'full',
      framePlaces: match.places,
      fished: match.waters.length > 1 ? null : fished,
      hours: hoursFished(match) ?? hours,
      ...(match.waters.length > 1 ? { match: match.id } : {}),
    },
    told: [
      ...(missing.length === 0 ? [] : [`Never weighed, and left out of the log: ${missing.join(', ')}.`]),
      ...(mixed.length === 0
        ? []
        : [
            `A net of ${mixed.join(', ')} may hold any fish: the bag is in the log, the weights of its parts stay open.`,
          ]),
    ],
  };
}

/**
 * What is known of each part of a bag: its fish where they were counted, its weight where every net was weighed apart. What
 * was noted of a part once and no longer stands is taken out of the log; what nobody noted stays as it is there.
 */
function partsOf(
  said: OnScales,
  once: readonly OnScales[],
  partIds: readonly string[],
  units: Units,
): ResultRow['parts'] {
  const grams = partGrams(said, partIds);
  const wasWeighed = once.some((each) => partGrams(each, partIds) !== null);
  return Object.fromEntries(
    partIds.flatMap((id) => {
      const count = said.fish[id] ?? (once.some(({ fish }) => fish[id] !== undefined) ? null : undefined);
      const written =
        grams === null
          ? wasWeighed
            ? ''
            : undefined
          : grams[id] === 0
            ? '0'
            : writtenWeight(grams[id]!, units.weight);
      const part = { ...(written === undefined ? {} : { written }), ...(count === undefined ? {} : { count }) };
      return Object.keys(part).length === 0 ? [] : [[id, part]];
    }),
  );
}

/** All that was ever noted of a peg's bag. */
function notesOf(notes: readonly Note[], peg: string): readonly OnScales[] {
  return notes.flatMap(({ about, value }) => (about === ABOUT.scales(peg) ? (onScales(value) ?? []) : []));
}

/** The parts of bags that a note of the scales names. */
function partsNamed(about: string, value: unknown): readonly string[] {
  const said = about.startsWith('scales ') ? onScales(value) : null;
  return said === null ? [] : [...said.nets.flatMap(({ part }) => part ?? []), ...Object.keys(said.fish)];
}
