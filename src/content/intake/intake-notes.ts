import { pegKey } from '../../domain/peg.ts';
import { CannotEdit, editFrontMatter, type FieldEdit, frontMatterValues } from '../edit-front-matter.ts';
import type { Fault } from '../fault.ts';
import type { PegFinding, RoundFile } from '../round-file/round-file.ts';
import { addReading, GaugeColumnMissing } from './gauge-rows.ts';
import type { Change, Conflict } from './intake-choice.ts';
import { mergePeg } from './merge-peg.ts';
import type { IntakeOptions, RoundToTake } from './plan-intake.ts';
import { roundCsv } from './round-rows.ts';
import { type FolderFiles, StagedFiles } from './staged-files.ts';

/** Collects what an intake does, round by round: a later round merges into what an earlier one left. */
export class IntakeNotes {
  readonly staged: StagedFiles;
  readonly faults: Fault[] = [];
  readonly changes: Change[] = [];
  readonly conflicts: Conflict[] = [];
  readonly #options: IntakeOptions;
  readonly #lengthUnit: 'm' | 'ft';

  constructor(folder: FolderFiles, options: IntakeOptions, lengthUnit: 'm' | 'ft') {
    this.staged = new StagedFiles(folder);
    this.#options = options;
    this.#lengthUnit = lengthUnit;
  }

  /** The round as the folder keeps it, without the pegs that are left out. */
  csvOf(round: RoundFile): string {
    return roundCsv({ ...round, pegs: round.pegs.filter((finding) => !this.#isLeftOut(finding)) }, this.#lengthUnit);
  }

  /** Notes everything a round changes but its own file. */
  take({ file, round, photos }: RoundToTake): void {
    const names = photoNames(round);
    for (const finding of round.pegs) if (!this.#isLeftOut(finding)) this.#takePeg(round, finding, names);
    for (const photo of round.photos) {
      const bytes = photos.get(photo.id);
      const name = names.get(photo.id);
      if (bytes === undefined || name === undefined || this.#isLeftOut(photo)) continue;
      this.staged.put(`photos/${name}`, bytes);
      this.#tell(pegKey(photo.water, photo.peg), 'photo', null, name);
    }
    for (const reading of round.gauges) this.#takeReading(file, round, reading);
    this.#moveGuideDayOn(round);
  }

  #isLeftOut({ water, peg }: { readonly water: string; readonly peg: string }): boolean {
    return this.#options.without.has(pegKey(water, peg));
  }

  #tell(where: string, field: string, from: string | null, to: string): void {
    this.changes.push({ where, field, from, to });
  }

  #takePeg(round: RoundFile, finding: PegFinding, names: ReadonlyMap<string, string>): void {
    const key = pegKey(finding.water, finding.peg);
    const path = `pegs/${key}.md`;
    const merge = mergePeg(
      this.staged.text(path) ?? '',
      this.#options.close?.has(key) === true ? closed(finding) : finding,
      { ref: round.ref, day: round.day, lengthUnit: this.#lengthUnit, photos: names, choose: this.#options.choose },
    );
    this.changes.push(...merge.changes);
    this.conflicts.push(...merge.conflicts);
    this.#edit(path, [...merge.edits, ...photoEdits(round, key, names)]);
  }

  #takeReading(file: string, round: RoundFile, reading: RoundFile['gauges'][number]): void {
    const path = `gauge/${reading.water}.csv`;
    try {
      const text = addReading(this.staged.text(path), round.day, reading, this.#lengthUnit);
      if (text === null) return;
      this.staged.put(path, text);
      const level = reading.levelMetres === undefined ? [] : [`level ${reading.levelMetres} m`];
      const temperature = reading.waterDegreesC === undefined ? [] : [`water ${reading.waterDegreesC} °C`];
      this.#tell(path, round.day, null, [...level, ...temperature].join(', '));
    } catch (error) {
      if (!(error instanceof GaugeColumnMissing)) throw error;
      const mend = `Add the column, then take ${file} in again.`;
      this.#refuse(path, 'gauge-column', error.message, 'a column for every figure of the reading', mend);
    }
  }

  /** What was found on a day is data of that day: the guide says so. */
  #moveGuideDayOn({ day }: RoundFile): void {
    const guideDay = frontMatterValues(this.staged.text('venue.md') ?? '')['guide-day'];
    if (typeof guideDay !== 'string' || guideDay >= day) return;
    this.#edit('venue.md', [{ kind: 'set', path: ['guide-day'], value: day }]);
    this.#tell('venue.md', 'guide-day', guideDay, day);
  }

  #edit(path: string, edits: readonly FieldEdit[]): void {
    if (edits.length === 0) return;
    try {
      this.staged.put(path, editFrontMatter(this.staged.text(path) ?? '', edits));
    } catch (error) {
      if (!(error instanceof CannotEdit)) throw error;
      const mend = 'Mend the file by hand, then run this again.';
      this.#refuse(path, 'record-edit', error.message, 'front matter that can be changed by machine', mend);
    }
  }

  #refuse(file: string, rule: string, found: string, expected: string, mend: string): void {
    this.faults.push({ file, line: 1, column: 1, field: '', rule, found, expected, mend, severity: 'error' });
  }
}

/** The finding of a peg that is closed for what was measured at it. */
function closed(finding: PegFinding): PegFinding {
  return { ...finding, status: 'closed', reason: 'Inside the stand-off of an overhead line, as measured on the bank.' };
}

/** File names of a round's photos by their id. */
function photoNames({ ref, photos }: RoundFile): ReadonlyMap<string, string> {
  return new Map(
    photos.map(({ id, water, peg }, index) => [id, `${water}-${peg}-${ref}-${index + 1}.jpg`.toLowerCase()]),
  );
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
