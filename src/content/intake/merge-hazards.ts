import type { Day } from '../../domain/day.ts';
import { hazardKind } from '../../domain/risk.ts';
import { frontMatterTexts } from '../edit-front-matter.ts';
import type { HazardFinding } from '../round-file/round-file.ts';
import type { ScalarValue } from '../yaml-edit/scalar-text.ts';
import type { MergeContext, MergeNotes } from './merge.ts';
import { type RecordedHazard, readHazards } from './recorded-hazards.ts';

type Found = Extract<HazardFinding, { did: 'found' }>;
type LookedAt = Exclude<HazardFinding, { did: 'found' }>;

/**
 * Merges the hazards found, looked at and cleared into a record. A hazard is known by its kind, its place and the day it
 * was found; one found where the record has the same kind at the same place counts as a look at it, and the same hazard
 * found twice in a round as one. Each keeps the day it was seen: an older look never undoes a newer one.
 * @param text the record as it is in the folder, a peg's or a water's
 * @param mappedAs of a water's record: the place of the map the findings are at
 */
export function mergeHazards(
  notes: MergeNotes,
  text: string,
  hazards: readonly HazardFinding[],
  mappedAs?: string,
): void {
  const recorded = readHazards(frontMatterTexts(text).hazards);
  const dayOf = (hazard: HazardFinding): Day => hazard.day ?? notes.context.day;
  for (const hazard of foundOnce(hazards)) {
    const known = recorded.find((one) => isSame(one, hazard, mappedAs));
    const day = dayOf(hazard);
    if (hazard.did === 'found') {
      if (known === undefined) append(notes, hazard, day, mappedAs);
      else if (Number(known.severity) * Number(known.likelihood) < hazard.severity * hazard.likelihood) {
        worsen(notes, known, hazard, day);
      } else check(notes, known, day);
    } else if (hazard.did === 'cleared') {
      if (known !== undefined && known.clearedOn === null) clear(notes, known, hazard, day);
    } else if (known === undefined) {
      if (stillThere(notes, hazard, 'no longer in the record', day)) append(notes, hazard, hazard.foundOn, mappedAs);
    } else if (known.clearedOn === null) look(notes, known, hazard, day);
    else if (known.clearedOn > day) keepNewer(notes, hazard, `seen ${day}`, `cleared ${known.clearedOn}`);
    else if (stillThere(notes, hazard, `cleared ${known.clearedOn}`, day)) takeBackClearing(notes, known, day);
  }
}

/** The findings with each new hazard once, at its worst: a second entry of the same is the same hazard. */
function foundOnce(hazards: readonly HazardFinding[]): readonly HazardFinding[] {
  const once: HazardFinding[] = [];
  for (const hazard of hazards) {
    const index = once.findIndex((one) => one.did === 'found' && hazard.did === 'found' && isSamePlace(one, hazard));
    const first = once[index];
    if (first === undefined || first.did !== 'found' || hazard.did !== 'found') once.push(hazard);
    else once[index] = worse(first, hazard);
  }
  return once;
}

/** Of two entries of one hazard the worse; words, place and picture of the other are kept where it has none. */
function worse(first: Found, second: Found): Found {
  const isWorse = second.severity * second.likelihood > first.severity * first.likelihood;
  return isWorse ? { ...first, ...second } : { ...second, ...first };
}

/** A hazard the round saw and the folder no longer has: whose word counts is for a person to say. */
function stillThere(notes: MergeNotes, hazard: LookedAt, folder: string, day: Day): boolean {
  return notes.takesRound(name(hazard), `found ${hazard.foundOn}`, folder, `still there on ${day}`);
}

function look(notes: MergeNotes, known: RecordedHazard, hazard: LookedAt, day: Day): void {
  if (hazard.did === 'worsened') worsen(notes, known, hazard, day);
  else if (hazard.did === 'controlled') control(notes, known, hazard, day);
  else check(notes, known, day);
}

function check(notes: MergeNotes, hazard: RecordedHazard, day: Day): void {
  // An older round tells nothing of a hazard that was found, or looked at, after it.
  if (day < hazard.foundOn || (hazard.checkedOn !== null && hazard.checkedOn >= day)) return;
  notes.set(`hazards.${hazard.index}.checked-on`, day);
  notes.tell(name(hazard), hazard.checkedOn === null ? null : `checked ${hazard.checkedOn}`, `checked ${day}`);
}

function worsen(notes: MergeNotes, known: RecordedHazard, hazard: HazardFinding, day: Day): void {
  const { severity, likelihood } = hazard;
  const words = `severity ${severity} × likelihood ${likelihood}`;
  const newer = [known.worsenedOn, known.controlledOn, known.checkedOn].filter((on) => on !== null && on > day).sort();
  if (newer.length > 0) {
    keepNewer(notes, hazard, `worse on ${day}, ${words}`, `seen ${newer.at(-1)}`);
    return;
  }
  const at = `hazards.${known.index}`;
  notes.set(`${at}.severity`, severity);
  notes.set(`${at}.likelihood`, likelihood);
  notes.set(`${at}.worsened-on`, day);
  // What a control had brought the score down to was said of the hazard as it was.
  for (const field of ['severity-after', 'likelihood-after'] as const) {
    if (known.fields.has(field)) notes.edits.push({ kind: 'remove', path: ['hazards', known.index, field] });
  }
  notes.tell(name(known), `severity ${known.severity} × likelihood ${known.likelihood}`, `worse on ${day}, ${words}`);
}

function control(notes: MergeNotes, known: RecordedHazard, hazard: LookedAt, day: Day): void {
  if (hazard.control === undefined) {
    check(notes, known, day);
    return;
  }
  const newer = [known.worsenedOn, known.controlledOn].filter((on) => on !== null && on > day).sort();
  if (newer.length > 0) {
    keepNewer(notes, hazard, `${hazard.control}, done ${day}`, `seen ${newer.at(-1)}`);
    return;
  }
  const at = `hazards.${known.index}`;
  notes.set(`${at}.control`, hazard.control);
  if (hazard.severityAfter !== undefined) notes.set(`${at}.severity-after`, hazard.severityAfter);
  if (hazard.likelihoodAfter !== undefined) notes.set(`${at}.likelihood-after`, hazard.likelihoodAfter);
  notes.set(`${at}.controlled-on`, day);
  notes.tell(name(known), null, `controlled ${day}: ${hazard.control}`);
}

function clear(notes: MergeNotes, known: RecordedHazard, hazard: LookedAt, day: Day): void {
  if (day < known.foundOn) return;
  const seen =
    [known.checkedOn, known.worsenedOn]
      .filter((on) => on !== null)
      .sort()
      .at(-1) ?? null;
  if (seen !== null && seen > day) {
    keepNewer(notes, hazard, `gone on ${day}`, `still there on ${seen}`);
    return;
  }
  const from = `found ${known.foundOn}`;
  if (hazardKind(known.kind).hardRule && (hazard.by === undefined || hazard.why === undefined)) {
    notes.tell(
      `${name(known)}, not cleared`,
      `gone on ${day}`,
      'a hard rule is cleared only by who decided and why: write cleared-on, cleared-by and cleared-why into the record',
    );
    return;
  }
  if (seen === day && known.foundOn !== day) {
    if (!notes.takesRound(name(known), from, `still there on ${seen}`, `gone on ${day}`)) return;
  }
  const at = `hazards.${known.index}`;
  notes.set(`${at}.cleared-on`, day);
  if (hazard.by !== undefined) notes.set(`${at}.cleared-by`, hazard.by);
  if (hazard.why !== undefined) notes.set(`${at}.cleared-why`, hazard.why);
  const photo = hazard.photo === undefined ? undefined : notes.context.photos.get(hazard.photo);
  if (photo !== undefined) notes.set(`${at}.cleared-photo`, photo);
  const decided = hazard.by === undefined ? '' : ` by ${hazard.by}`;
  notes.tell(name(known), from, `cleared ${day}${decided}${hazard.why === undefined ? '' : `: ${hazard.why}`}`);
}

function takeBackClearing(notes: MergeNotes, hazard: RecordedHazard, day: Day): void {
  for (const field of ['cleared-on', 'cleared-by', 'cleared-why', 'cleared-photo']) {
    if (hazard.fields.has(field)) notes.edits.push({ kind: 'remove', path: ['hazards', hazard.index, field] });
  }
  notes.set(`hazards.${hazard.index}.checked-on`, day);
  notes.tell(name(hazard), `cleared ${hazard.clearedOn}`, `still there, checked ${day}`);
}

function keepNewer(notes: MergeNotes, hazard: { kind: string; place: string }, round: string, folder: string): void {
  notes.tell(`${name(hazard)}, not taken`, round, `${folder} stands: it is newer`);
}

function append(notes: MergeNotes, hazard: HazardFinding, foundOn: string, mappedAs: string | undefined): void {
  const item = itemOf(hazard, foundOn, notes.context, mappedAs);
  notes.edits.push({ kind: 'append', path: ['hazards'], item });
  const risk = `severity ${hazard.severity} × likelihood ${hazard.likelihood}`;
  notes.tell(name(hazard), null, `found ${foundOn}, ${risk}`);
}

function name({ kind, place }: { readonly kind: string; readonly place: string }): string {
  return `hazard ${kind} (${place})`;
}

function itemOf(
  hazard: HazardFinding,
  foundOn: string,
  { day, ref, by, photos }: MergeContext,
  mappedAs: string | undefined,
): Record<string, ScalarValue> {
  const found: Partial<Found> = hazard.did === 'found' ? hazard : {};
  const photo = found.photo === undefined ? undefined : photos.get(found.photo);
  return {
    kind: hazard.kind,
    place: hazard.place,
    ...(mappedAs === undefined ? {} : { 'mapped-as': mappedAs }),
    ...(found.action === undefined ? {} : { action: found.action }),
    severity: hazard.severity,
    likelihood: hazard.likelihood,
    'found-on': foundOn,
    ...(hazard.did === 'found' && by !== undefined ? { 'found-by': by } : {}),
    'checked-on': hazard.day ?? day,
    round: ref,
    ...(photo === undefined ? {} : { photo }),
  };
}

function isSame(recorded: RecordedHazard, hazard: HazardFinding, mappedAs: string | undefined): boolean {
  if ((recorded.mappedAs ?? undefined) !== mappedAs || !isSamePlace(recorded, hazard)) return false;
  return hazard.did === 'found' ? recorded.clearedOn === null : recorded.foundOn === hazard.foundOn;
}

interface KindAndPlace {
  readonly kind: string;
  readonly place: string;
}

function isSamePlace(a: KindAndPlace, b: KindAndPlace): boolean {
  return a.kind === b.kind && a.place.trim().toLowerCase() === b.place.trim().toLowerCase();
}
