import { parse } from 'csv-parse/sync';
import type { Day } from '../../domain/day.ts';
import { pegKey } from '../../domain/peg.ts';
import { CannotEdit, editFrontMatter, type FieldEdit, frontMatterValues } from '../edit-front-matter.ts';
import type { Fault } from '../fault.ts';
import type { NewFile } from '../folder-change/commit-change.ts';
import type { PegFinding, RoundFile } from '../round-file/round-file.ts';
import { addReading, GaugeColumnMissing } from './gauge-rows.ts';
import type { Change, Choose, Conflict } from './intake-choice.ts';
import { mergePeg } from './merge-peg.ts';
import { refusalsOf } from './refuse-round.ts';
import { roundCsv } from './round-rows.ts';
import { type FolderFiles, StagedFiles } from './staged-files.ts';

/** A round that was read, and its photos, cleaned, by their id. */
export interface RoundToTake {
  /** The file it came in, for messages. */
  readonly file: string;
  readonly round: RoundFile;
  readonly photos: ReadonlyMap<string, Uint8Array>;
}

export interface IntakeOptions {
  /** The latest day it may be anywhere on Earth: a round of a later day is refused. */
  readonly today: Day;
  /** Pegs (`kiln-pool/23`) whose findings are to be left out. */
  readonly without: ReadonlySet<string>;
  /** Pegs to be closed with this intake: what was measured puts them inside the stand-off of a line. */
  readonly close?: ReadonlySet<string>;
  readonly choose: Choose;
}

/** What an intake would write. With faults or conflicts it is not to be written. */
export interface IntakePlan {
  readonly files: readonly NewFile[];
  readonly changes: readonly Change[];
  readonly conflicts: readonly Conflict[];
  readonly faults: readonly Fault[];
  readonly taken: readonly RoundFile[];
  /** Rounds that are in the folder already; nothing is done for them. */
  readonly alreadyIn: readonly RoundFile[];
}

/** Works out what taking rounds in does to a venue folder, and writes nothing. Earlier rounds go first. */
export function planIntake(folder: FolderFiles, rounds: readonly RoundToTake[], options: IntakeOptions): IntakePlan {
  const staged = new StagedFiles(folder);
  const faults: Fault[] = [];
  const changes: Change[] = [];
  const conflicts: Conflict[] = [];
  const taken: RoundFile[] = [];
  const alreadyIn: RoundFile[] = [];
  const seen = new Set<string>();
  const settings = frontMatterValues(folder.text('venue.md') ?? '');
  const units = settings.units as { readonly length?: unknown } | undefined;
  const lengthUnit = units?.length === 'ft' ? 'ft' : 'm';

  for (const { file, round, photos } of rounds.toSorted((a, b) => (a.round.day < b.round.day ? -1 : 1))) {
    const isLeftOut = (one: { water: string; peg: string }): boolean => options.without.has(pegKey(one.water, one.peg));
    const csv = roundCsv({ ...round, pegs: round.pegs.filter((finding) => !isLeftOut(finding)) }, lengthUnit);
    const kept = folder.rounds.find((name) => name.endsWith(`-${round.ref}.csv`));
    const isKept = kept !== undefined && sameRows(folder.text(`rounds/${kept}`) ?? '', csv);
    if (isKept || seen.has(round.ref)) {
      alreadyIn.push(round);
      continue;
    }
    seen.add(round.ref);
    const refusals = refusalsOf(file, round, folder, settings, options, kept);
    faults.push(...refusals);
    if (refusals.length > 0) continue;
    const names = new Map([...photos.keys()].map((id, index) => [id, photoName(round, id, index + 1)]));
    const context = { ref: round.ref, day: round.day, lengthUnit, photos: names, choose: options.choose } as const;

    for (const finding of round.pegs) {
      if (isLeftOut(finding)) continue;
      const key = pegKey(finding.water, finding.peg);
      const path = `pegs/${key}.md`;
      const merge = mergePeg(
        staged.text(path) ?? '',
        options.close?.has(key) === true ? closed(finding) : finding,
        context,
      );
      changes.push(...merge.changes);
      conflicts.push(...merge.conflicts);
      edit(path, [...merge.edits, ...photoEdits(round, key, names)]);
    }
    for (const [id, bytes] of photos) {
      const photo = round.photos.find((one) => one.id === id)!;
      if (isLeftOut(photo)) continue;
      staged.put(`photos/${names.get(id)}`, bytes);
      changes.push({ where: pegKey(photo.water, photo.peg), field: 'photo', from: null, to: names.get(id)! });
    }
    for (const reading of round.gauges) addGauge(file, round, reading);
    const guideDay = frontMatterValues(staged.text('venue.md') ?? '')['guide-day'];
    if (typeof guideDay === 'string' && guideDay < round.day) {
      edit('venue.md', [{ kind: 'set', path: ['guide-day'], value: round.day }]);
      changes.push({ where: 'venue.md', field: 'guide-day', from: guideDay, to: round.day });
    }
    staged.put(`rounds/${round.day}-${round.ref}.csv`, csv);
    taken.push(round);
  }
  return { files: staged.changed(), changes, conflicts, faults, taken, alreadyIn };

  function edit(path: string, edits: readonly FieldEdit[]): void {
    if (edits.length === 0) return;
    try {
      staged.put(path, editFrontMatter(staged.text(path) ?? '', edits));
    } catch (error) {
      if (!(error instanceof CannotEdit)) throw error;
      const expected = 'front matter that can be changed by machine';
      faults.push(
        fault(path, '', 'record-edit', error.message, expected, 'Mend the file by hand, then run this again.'),
      );
    }
  }

  function addGauge(file: string, round: RoundFile, reading: RoundFile['gauges'][number]): void {
    const path = `gauge/${reading.water}.csv`;
    try {
      const text = addReading(staged.text(path), round.day, reading, lengthUnit);
      if (text === null) return;
      staged.put(path, text);
      const figures = [
        ...(reading.levelMetres === undefined ? [] : [`level ${reading.levelMetres} m`]),
        ...(reading.waterDegreesC === undefined ? [] : [`water ${reading.waterDegreesC} °C`]),
      ];
      changes.push({ where: path, field: round.day, from: null, to: figures.join(', ') });
    } catch (error) {
      if (!(error instanceof GaugeColumnMissing)) throw error;
      faults.push(
        fault(
          path,
          '',
          'gauge-column',
          error.message,
          'a column for every figure of the reading',
          `Add the column, then take ${file} in again.`,
        ),
      );
    }
  }
}

/** The finding of a peg that is closed for what was measured at it. */
function closed(finding: PegFinding): PegFinding {
  return { ...finding, status: 'closed', reason: 'Inside the stand-off of an overhead line, as measured on the bank.' };
}

function fault(file: string, field: string, rule: string, found: string, expected: string, mend: string): Fault {
  return { file, line: 1, column: 1, field, rule, found, expected, mend, severity: 'error' };
}

/** A photo that shows a hazard is named in the hazard; any other goes on the peg's list. */
function photoEdits(round: RoundFile, key: string, names: ReadonlyMap<string, string>): FieldEdit[] {
  const ofHazards = new Set(
    round.pegs.flatMap(({ hazards }) => hazards.map((one) => (one.did === 'found' ? one.photo : ''))),
  );
  return round.photos
    .filter((photo) => pegKey(photo.water, photo.peg) === key && !ofHazards.has(photo.id) && names.has(photo.id))
    .map((photo) => ({ kind: 'append', path: ['photos'], item: { file: names.get(photo.id)!, alt: photo.shows } }));
}

function photoName(round: RoundFile, id: string, count: number): string {
  const photo = round.photos.find((one) => one.id === id)!;
  return `${photo.water}-${photo.peg}-${round.ref}-${count}.jpg`.toLowerCase();
}

function sameRows(a: string, b: string): boolean {
  const rows = (text: string): string =>
    JSON.stringify(parse(text, { bom: true, relax_column_count: true, record_delimiter: ['\r\n', '\n', '\r'] }));
  try {
    return rows(a) === rows(b);
  } catch {
    return false;
  }
}
