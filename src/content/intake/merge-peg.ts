import { CLEARANCE_MEASURES } from '../../domain/clearance-measures.ts';
import type { Day } from '../../domain/day.ts';
import { pegKey } from '../../domain/peg.ts';
import { frontMatterTexts } from '../edit-front-matter.ts';
import { knownFields } from '../round-file/record-version.ts';
import type { DatedField, Known, PegFinding, RoundField } from '../round-file/round-file.ts';
import { lengthText } from './length-text.ts';
import { type Merge, type MergeContext, MergeNotes } from './merge.ts';
import { mergeHazards } from './merge-hazards.ts';

/**
 * Merges one peg's finding into its record, fact by fact: what the record still says as the round's guide did is changed,
 * what the folder saw later stands, what somebody else changed since without a later day is a conflict.
 * @param text the record as it is in the folder
 */
export function mergePeg(text: string, finding: PegFinding, context: MergeContext): Merge {
  const values = frontMatterTexts(text);
  const notes = new MergeNotes(context, pegKey(finding.water, finding.peg));
  mergeStatus(notes, knownFields(values), finding);
  mergeMeasures(notes, knownFields(values), values, finding);
  mergeHazards(notes, text, finding.hazards);
  return notes;
}

/** The day one field of a finding was seen. */
export function daySeen(finding: Pick<PegFinding, 'day' | 'days'>, field: DatedField, roundDay: Day): Day {
  return finding.days?.[field] ?? finding.day ?? roundDay;
}

/** Status, its reason and its day go together. A closing for a time is a notice, not a status. */
function mergeStatus(notes: MergeNotes, folder: Known, finding: PegFinding): void {
  const { status, reason, until, known } = finding;
  if (status === undefined || until !== undefined || (status === folder.status && reason === undefined)) return;
  const seenOn = daySeen(finding, 'status', notes.context.day);
  const round = statusText(status, reason) ?? status;
  const now = statusText(folder.status, folder['status-reason']);
  if (round === now) return;
  const isTaken = notes.takesFact({
    field: 'status',
    guide: statusText(known.status, known['status-reason']),
    folder: now,
    round,
    seenOn,
    folderDay: folder['status-since'],
    knownDay: known['status-since'],
  });
  if (!isTaken) return;
  if (status !== folder.status) notes.set('status', status);
  if (status === 'open') notes.edits.push({ kind: 'remove', path: ['status-reason'] });
  else if (reason !== undefined) notes.set('status-reason', reason);
  if (status !== folder.status) notes.set('status-since', seenOn);
  notes.tell('status', now, round);
}

function statusText(status: string | undefined, reason: string | undefined): string | null {
  if (status === undefined) return null;
  return reason === undefined || status === 'open' ? status : `${status} (${reason})`;
}

function mergeMeasures(
  notes: MergeNotes,
  folder: Known,
  values: Readonly<Record<string, unknown>>,
  finding: PegFinding,
): void {
  const { day, lengthUnit } = notes.context;
  /** Writes one field where the round takes it; returns the day it was seen then, else null. */
  const put = (field: RoundField, value: string | undefined, seen: DatedField, dayField: RoundField): Day | null => {
    const now = folder[field] ?? null;
    if (value === undefined) return null;
    const seenOn = daySeen(finding, seen, day);
    const fact = { field, guide: finding.known[field] ?? null, folder: now, round: value, seenOn };
    if (!notes.takesFact({ ...fact, folderDay: folder[dayField], knownDay: finding.known[dayField] })) return null;
    if (now !== value) {
      notes.set(field, value);
      notes.tell(field, now, value);
    }
    return seenOn;
  };
  const putLength = (field: RoundField, metres: number | undefined, seen: DatedField, dayField: RoundField) =>
    put(field, metres === undefined ? undefined : lengthText(metres, lengthUnit), seen, dayField);
  /** The day moves on also where the figure stayed, never back. */
  const putDay = (field: RoundField, taken: readonly (Day | null)[]): void => {
    const now = folder[field] ?? null;
    const latest = taken
      .filter((one) => one !== null)
      .sort()
      .at(-1);
    if (latest === undefined || (now !== null && now >= latest)) return;
    notes.set(field, latest);
    notes.tell(field, now, latest);
  };

  const inspected = put('platform.condition', finding.platform, 'platform', 'platform.inspected-on');
  if (inspected !== null && inner(values.platform, 'kind') === null) {
    // A record needs to say what a platform is made of; a bailiff who finds one worn has not been asked.
    notes.set('platform.kind', 'not stated');
  }
  putDay('platform.inspected-on', [inspected]);
  putDay(
    'clearance.measured-on',
    CLEARANCE_MEASURES.map(({ key, field }) =>
      putLength(`clearance.${key}`, finding[field], field, 'clearance.measured-on'),
    ),
  );
  const measured = putLength(
    'measured-line-distance.distance',
    finding.lineDistanceMetres,
    'lineDistanceMetres',
    'measured-line-distance.measured-on',
  );
  if (measured !== null) {
    putDay('measured-line-distance.measured-on', [measured]);
    const method = finding.lineMethod ?? 'not stated';
    if (inner(values['measured-line-distance'], 'method') !== method)
      notes.set('measured-line-distance.method', method);
  }
}

function inner(map: unknown, key: string): string | null {
  const value = typeof map === 'object' && map !== null ? (map as Record<string, unknown>)[key] : undefined;
  return typeof value === 'string' ? value : null;
}
