import type { HazardFinding } from '../round-file/round-file.ts';
import type { ScalarValue } from '../yaml-edit/scalar-text.ts';
import type { MergeContext, MergeNotes } from './merge.ts';

/** A hazard as its record writes it, unchecked. */
interface RecordedHazard {
  readonly index: number;
  readonly kind: string;
  readonly place: string;
  readonly foundOn: string;
  readonly checkedOn: string | null;
  readonly clearedOn: string | null;
}

type Found = Extract<HazardFinding, { did: 'found' }>;

/**
 * Merges the hazards found, checked and cleared at a peg into its record. A hazard is known by its kind, its place and
 * the day it was found; one found where the record has the same kind at the same place counts as checked.
 * @param listed the record's `hazards`, unchecked
 */
export function mergeHazards(notes: MergeNotes, listed: unknown, hazards: readonly HazardFinding[]): void {
  const recorded = readHazards(listed);
  for (const hazard of hazards) {
    const known = recorded.find((one) => isSame(one, hazard));
    if (hazard.did === 'found') {
      if (known === undefined) append(notes, hazard, notes.context.day);
      else check(notes, known);
    } else if (hazard.did === 'cleared') {
      if (known !== undefined && known.clearedOn === null) clear(notes, known);
    } else if (known === undefined) {
      if (stillThere(notes, hazard, 'no longer in the record')) append(notes, hazard, hazard.foundOn);
    } else if (known.clearedOn === null) check(notes, known);
    else if (stillThere(notes, hazard, `cleared ${known.clearedOn}`)) takeBackClearing(notes, known);
  }
}

/** A hazard the round saw and the folder no longer has: whose word counts is for a person to say. */
function stillThere(notes: MergeNotes, hazard: HazardFinding & { foundOn: string }, folder: string): boolean {
  return notes.takesRound(name(hazard), `found ${hazard.foundOn}`, folder, `still there on ${notes.context.day}`);
}

function check(notes: MergeNotes, hazard: RecordedHazard): void {
  const { day } = notes.context;
  // An older round tells nothing of a hazard that was found, or looked at, after it.
  if (day < hazard.foundOn || (hazard.checkedOn !== null && hazard.checkedOn >= day)) return;
  notes.set(`hazards.${hazard.index}.checked-on`, day);
  notes.tell(name(hazard), hazard.checkedOn === null ? null : `checked ${hazard.checkedOn}`, `checked ${day}`);
}

function clear(notes: MergeNotes, hazard: RecordedHazard): void {
  if (notes.context.day < hazard.foundOn) return;
  notes.set(`hazards.${hazard.index}.cleared-on`, notes.context.day);
  notes.tell(name(hazard), `found ${hazard.foundOn}`, `cleared ${notes.context.day}`);
}

function takeBackClearing(notes: MergeNotes, hazard: RecordedHazard): void {
  notes.edits.push({ kind: 'remove', path: ['hazards', hazard.index, 'cleared-on'] });
  notes.set(`hazards.${hazard.index}.checked-on`, notes.context.day);
  notes.tell(name(hazard), `cleared ${hazard.clearedOn}`, `still there, checked ${notes.context.day}`);
}

function append(notes: MergeNotes, hazard: HazardFinding, foundOn: string): void {
  notes.edits.push({ kind: 'append', path: ['hazards'], item: itemOf(hazard, foundOn, notes.context) });
  const risk = `severity ${hazard.severity} × likelihood ${hazard.likelihood}`;
  notes.tell(name(hazard), null, `found ${foundOn}, ${risk}`);
}

function name({ kind, place }: { readonly kind: string; readonly place: string }): string {
  return `hazard ${kind} (${place})`;
}

function itemOf(
  hazard: HazardFinding,
  foundOn: string,
  { day, ref, photos }: MergeContext,
): Record<string, ScalarValue> {
  const found: Partial<Found> = hazard.did === 'found' ? hazard : {};
  const photo = found.photo === undefined ? undefined : photos.get(found.photo);
  return {
    kind: hazard.kind,
    place: hazard.place,
    ...(found.action === undefined ? {} : { action: found.action }),
    severity: hazard.severity,
    likelihood: hazard.likelihood,
    'found-on': foundOn,
    'checked-on': day,
    round: ref,
    ...(photo === undefined ? {} : { photo }),
  };
}

function isSame(recorded: RecordedHazard, hazard: HazardFinding): boolean {
  if (recorded.kind !== hazard.kind || plain(recorded.place) !== plain(hazard.place)) return false;
  return hazard.did === 'found' ? recorded.clearedOn === null : recorded.foundOn === hazard.foundOn;
}

function plain(place: string): string {
  return place.trim().toLowerCase();
}

function readHazards(listed: unknown): RecordedHazard[] {
  if (!Array.isArray(listed)) return [];
  return listed.map((item: unknown, index) => {
    const fields = (typeof item === 'object' && item !== null ? item : {}) as Record<string, unknown>;
    const text = (key: string): string | null => (typeof fields[key] === 'string' ? fields[key] : null);
    return {
      index,
      kind: text('kind') ?? '',
      place: text('place') ?? '',
      foundOn: text('found-on') ?? '',
      checkedOn: text('checked-on'),
      clearedOn: text('cleared-on'),
    };
  });
}
