import { parse } from 'csv-parse/sync';
import type { Day } from '../../domain/day.ts';
import { frontMatterTexts } from '../edit-front-matter.ts';
import type { Fault } from '../fault.ts';
import type { NewFile } from '../folder-change/commit-change.ts';
import type { RoundFile } from '../round-file/round-file.ts';
import type { KeepOpen } from './close-pegs.ts';
import type { Change, Choose, Conflict } from './intake-choice.ts';
import { IntakeNotes } from './intake-notes.ts';
import { refusalsOf } from './refuse-round.ts';
import type { FolderFiles } from './staged-files.ts';

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
  /** Pegs that stay open in spite of an unsafe platform or a hard rule found at them, by who of the club says so, and why. */
  readonly keepOpen?: ReadonlyMap<string, KeepOpen>;
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
  const settings = frontMatterTexts(folder.text('venue.md') ?? '');
  const notes = new IntakeNotes(folder, options, lengthUnitOf(settings));
  const taken: RoundFile[] = [];
  const alreadyIn: RoundFile[] = [];
  const seen = new Set<string>();
  for (const toTake of rounds.toSorted((a, b) => (a.round.day < b.round.day ? -1 : 1))) {
    const { file, round } = toTake;
    const csv = notes.csvOf(round);
    const kept = folder.rounds.find((name) => name.endsWith(`-${round.ref}.csv`));
    if (seen.has(round.ref) || (kept !== undefined && sameRows(folder.text(`rounds/${kept}`) ?? '', csv))) {
      alreadyIn.push(round);
      continue;
    }
    seen.add(round.ref);
    const refusals = refusalsOf(file, round, folder, settings, options, kept);
    notes.faults.push(...refusals);
    if (refusals.length > 0) continue;
    notes.take(toTake);
    notes.staged.put(`rounds/${round.day}-${round.ref}.csv`, csv);
    taken.push(round);
  }
  const { staged, changes, conflicts, faults } = notes;
  return { files: staged.changed(), changes, conflicts, faults, taken, alreadyIn };
}

function lengthUnitOf(settings: Readonly<Record<string, unknown>>): 'm' | 'ft' {
  return (settings.units as { readonly length?: unknown } | undefined)?.length === 'ft' ? 'ft' : 'm';
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
