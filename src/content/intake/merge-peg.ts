import { pegKey } from '../../domain/peg.ts';
import { frontMatterValues } from '../edit-front-matter.ts';
import { knownFields } from '../round-file/record-version.ts';
import type { Known, PegFinding, RoundField } from '../round-file/round-file.ts';
import { lengthText } from './length-text.ts';
import { type Merge, type MergeContext, MergeNotes } from './merge.ts';
import { mergeHazards } from './merge-hazards.ts';

/**
 * Merges one peg's finding into its record, field by field: what the record still says as the round's guide did is
 * changed, what somebody else changed since is a conflict unless both say the same.
 * @param text the record as it is in the folder
 */
export function mergePeg(text: string, finding: PegFinding, context: MergeContext): Merge {
  const values = frontMatterValues(text);
  const notes = new MergeNotes(context, pegKey(finding.water, finding.peg));
  mergeStatus(notes, knownFields(values), finding);
  mergeMeasures(notes, knownFields(values), values, finding);
  mergeHazards(notes, values.hazards, finding.hazards);
  return notes;
}

/** Status, its reason and its day go together. */
function mergeStatus(notes: MergeNotes, folder: Known, { status, reason, known }: PegFinding): void {
  if (status === undefined || (status === folder.status && reason === undefined)) return;
  const round = statusText(status, reason) ?? status;
  const now = statusText(folder.status, folder['status-reason']);
  if (round === now || !notes.takesRound('status', statusText(known.status, known['status-reason']), now, round))
    return;
  if (status !== folder.status) notes.set('status', status);
  if (status === 'open') notes.edits.push({ kind: 'remove', path: ['status-reason'] });
  else if (reason !== undefined) notes.set('status-reason', reason);
  if (status !== folder.status) notes.set('status-since', notes.context.day);
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
  /** Writes one field where the round takes it; tells whether it does. */
  const put = (field: RoundField, value: string | undefined): boolean => {
    const now = folder[field] ?? null;
    if (value === undefined || !notes.takesRound(field, finding.known[field] ?? null, now, value)) return false;
    if (now !== value) {
      notes.set(field, value);
      notes.tell(field, now, value);
    }
    return true;
  };
  const putLength = (field: RoundField, metres: number | undefined): boolean =>
    put(field, metres === undefined ? undefined : lengthText(metres, lengthUnit));
  /** The day of measuring moves on also where the figure stayed. */
  const putDay = (map: string): void => {
    const now = inner(values[map], 'measured-on');
    if (now !== null && now >= day) return;
    notes.set(`${map}.measured-on`, day);
    notes.tell(`${map}.measured-on`, now, day);
  };

  if (put('platform.condition', finding.platform) && inner(values.platform, 'kind') === null) {
    // A record needs to say what a platform is made of; a bailiff who finds one worn has not been asked.
    notes.set('platform.kind', 'not stated');
  }
  const measured = [
    putLength('clearance.clear-width', finding.clearWidthMetres),
    putLength('clearance.lowest-branch', finding.lowestBranchMetres),
    putLength('clearance.path-width', finding.pathWidthMetres),
  ];
  if (measured.includes(true)) putDay('clearance');
  if (putLength('measured-line-distance.distance', finding.lineDistanceMetres)) {
    putDay('measured-line-distance');
    const method = finding.lineMethod ?? 'tape';
    if (inner(values['measured-line-distance'], 'method') !== method)
      notes.set('measured-line-distance.method', method);
  }
}

function inner(map: unknown, key: string): string | null {
  const value = typeof map === 'object' && map !== null ? (map as Record<string, unknown>)[key] : undefined;
  return typeof value === 'string' ? value : null;
}
