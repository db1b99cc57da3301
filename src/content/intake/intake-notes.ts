import { pegKey } from '../../domain/peg.ts';
import { hazardKind } from '../../domain/risk.ts';
import { CLOSED_FOR_LINE } from '../../domain/verdict-words.ts';
import { CannotEdit, editFrontMatter, type FieldEdit, type FieldPath, frontMatterTexts } from '../edit-front-matter.ts';
import type { Fault } from '../fault.ts';
import type { HazardFinding, PegFinding, PlaceFinding, RoundFile } from '../round-file/round-file.ts';
import { closingWords, type KeepOpen } from './close-pegs.ts';
import { addReading, GaugeColumnMissing } from './gauge-rows.ts';
import type { Change, Conflict } from './intake-choice.ts';
import { type MergeContext, MergeNotes } from './merge.ts';
import { mergeHazards } from './merge-hazards.ts';
import { mergePeg } from './merge-peg.ts';
import { newNotices } from './new-notices.ts';
import { type NewNotice, noticeFile } from './notice-file.ts';
import type { IntakeOptions, RoundToTake } from './plan-intake.ts';
import { readHazards } from './recorded-hazards.ts';
import { lastDayOf } from './round-days.ts';
import { roundCsv } from './round-rows.ts';
import { type FolderFiles, StagedFiles } from './staged-files.ts';

/** From this version on a round says of each fact which day its guide knew. */
const DATED_SINCE_VERSION = 2;

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
    for (const finding of round.places ?? []) this.#takePlace(round, finding, names);
    for (const notice of newNotices(round, this.#options.without)) this.#takeNotice(round, notice);
    for (const photo of round.photos) {
      const bytes = photos.get(photo.id);
      const name = names.get(photo.id);
      if (bytes === undefined || name === undefined || this.#isLeftOut(photo)) continue;
      this.staged.put(`photos/${name}`, bytes);
      this.#tell(placeKey(photo), 'photo', null, name);
    }
    for (const reading of round.gauges) this.#takeReading(file, round, reading);
    this.#moveGuideDayOn(round);
  }

  #isLeftOut({ water, peg }: { readonly water: string; readonly peg?: string }): boolean {
    return peg !== undefined && this.#options.without.has(pegKey(water, peg));
  }

  #tell(where: string, field: string, from: string | null, to: string): void {
    this.changes.push({ where, field, from, to });
  }

  #context(round: RoundFile, photos: ReadonlyMap<string, string>): MergeContext {
    const { ref, day, version, guideDay, by } = round;
    const undatedGuide = version < DATED_SINCE_VERSION ? guideDay : null;
    return { ref, day, undatedGuide, by, lengthUnit: this.#lengthUnit, photos, choose: this.#options.choose };
  }

  #takePeg(round: RoundFile, finding: PegFinding, names: ReadonlyMap<string, string>): void {
    const key = pegKey(finding.water, finding.peg);
    const path = `pegs/${key}.md`;
    const keepOpen = this.#options.keepOpen?.get(key);
    const merge = mergePeg(
      this.staged.text(path) ?? '',
      withClosing(finding, this.#options.close?.has(key) === true, keepOpen !== undefined),
      this.#context(round, names),
    );
    this.changes.push(...merge.changes);
    this.conflicts.push(...merge.conflicts);
    this.#edit(path, [...merge.edits, ...photoEdits(round, key, names)]);
    if (keepOpen !== undefined) this.#keepOpen(round, key, keepOpen);
    if (finding.note !== undefined) this.#tell(key, 'note to the club', null, finding.note);
  }

  /** Writes who keeps a peg open into what would close it. */
  #keepOpen(round: RoundFile, key: string, { by, why }: KeepOpen): void {
    const path = `pegs/${key}.md`;
    const text = this.staged.text(path) ?? '';
    const { platform, hazards } = frontMatterTexts(text);
    const at = readHazards(hazards)
      .filter(({ kind, clearedOn }) => clearedOn === null && kind !== 'overhead-line' && hazardKind(kind).hardRule)
      .map(({ index }): FieldPath => ['hazards', index, 'kept-open']);
    const isUnsafe = closingWords({ platform: conditionOf(platform), hazards: [] }) !== null;
    const paths = [...at, ...(isUnsafe ? [['platform', 'kept-open'] satisfies FieldPath] : [])];
    const on = round.day;
    this.#edit(
      path,
      paths.flatMap((path): FieldEdit[] =>
        Object.entries({ on, by, why }).map(([key, value]) => ({ kind: 'set', path: [...path, key], value })),
      ),
    );
    this.#tell(key, 'kept open', null, `by ${by}: ${why}`);
  }

  #takePlace(round: RoundFile, finding: PlaceFinding, names: ReadonlyMap<string, string>): void {
    const path = `waters/${finding.water}.md`;
    const where = placeKey(finding);
    const notes = new MergeNotes(this.#context(round, names), where);
    mergeHazards(notes, this.staged.text(path) ?? '', dated(finding), finding.place);
    this.changes.push(...notes.changes);
    this.conflicts.push(...notes.conflicts);
    this.#edit(path, notes.edits);
    if (finding.kit !== undefined) this.#tell(where, 'rescue kit', null, `${finding.kit}, ${finding.day ?? round.day}`);
    if (finding.note !== undefined) this.#tell(where, 'note to the club', null, finding.note);
    if (finding.closing !== undefined && finding.closing.until === undefined) this.#closeWater(round, finding);
  }

  /** A closing without an end is each peg's own status: a notice alone would leave the records open. */
  #closeWater(round: RoundFile, { water, closing, day }: PlaceFinding): void {
    for (const peg of this.staged.pegsOf(water)) {
      const path = `pegs/${pegKey(water, peg)}.md`;
      const { status } = frontMatterTexts(this.staged.text(path) ?? '');
      if (status !== 'open') continue;
      const values = { status: 'closed', 'status-since': day ?? round.day, 'status-reason': closing?.reason ?? '' };
      this.#edit(
        path,
        Object.entries(values).map(([key, value]): FieldEdit => ({ kind: 'set', path: [key], value })),
      );
      this.#tell(pegKey(water, peg), 'status', 'open', `closed (${closing?.reason ?? ''})`);
    }
  }

  #takeNotice(round: RoundFile, notice: NewNotice): void {
    const stem = `notices/${notice.from}-round-${round.ref}`;
    let number = 1;
    while (this.staged.text(`${stem}-${number}.md`) !== null) number++;
    const path = `${stem}-${number}.md`;
    this.staged.put(path, noticeFile(notice));
    const until = notice.until === undefined ? '' : ` until ${notice.until}`;
    this.#tell(path, notice.kind, null, `${notice.title}, from ${notice.from}${until}`);
  }

  #takeReading(file: string, round: RoundFile, reading: RoundFile['gauges'][number]): void {
    const path = `gauge/${reading.water}.csv`;
    try {
      const day = reading.day ?? round.day;
      const text = addReading(this.staged.text(path), day, reading, this.#lengthUnit);
      if (text === null) return;
      this.staged.put(path, text);
      const level = reading.levelMetres === undefined ? [] : [`level ${reading.levelMetres} m`];
      const temperature = reading.waterDegreesC === undefined ? [] : [`water ${reading.waterDegreesC} °C`];
      this.#tell(path, day, null, [...level, ...temperature].join(', '));
    } catch (error) {
      if (!(error instanceof GaugeColumnMissing)) throw error;
      const mend = `Add the column, then take ${file} in again.`;
      this.#refuse(path, 'gauge-column', error.message, 'a column for every figure of the reading', mend);
    }
  }

  /** What was found on a day is data of that day: the guide says so. */
  #moveGuideDayOn(round: RoundFile): void {
    const day = lastDayOf(round);
    const guideDay = frontMatterTexts(this.staged.text('venue.md') ?? '')['guide-day'];
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

/** The finding with what closes its peg: a measured distance, a platform that must not be used, a hard rule. */
function withClosing(finding: PegFinding, isInside: boolean, isKeptOpen: boolean): PegFinding {
  const words = closingWords(finding);
  const reason = isInside ? `${CLOSED_FOR_LINE}.` : words;
  if (reason === null || (isKeptOpen && !isInside)) return finding;
  // The bailiff's own words for a closing say more.
  if (finding.status === 'closed' && finding.until === undefined && !isInside) return finding;
  const { until: _, ...rest } = finding;
  return { ...rest, status: 'closed', reason };
}

function conditionOf(platform: unknown): string | undefined {
  const condition = (platform as { readonly condition?: unknown } | undefined)?.condition;
  return typeof condition === 'string' ? condition : undefined;
}

/** Findings at a place with the day of the place, where they have none of their own. */
function dated({ hazards, day }: PlaceFinding): readonly HazardFinding[] {
  return day === undefined ? hazards : hazards.map((hazard) => ({ day, ...hazard }));
}

/** How the summary names where something is: `kiln-pool/23`, `kiln-pool, gate-2`, `kiln-pool`. */
function placeKey({ water, peg, place }: { water: string; peg?: string; place?: string }): string {
  if (peg !== undefined) return pegKey(water, peg);
  return place === undefined ? water : `${water}, ${place}`;
}

/** File names of a round's photos by their id. */
function photoNames({ ref, photos }: RoundFile): ReadonlyMap<string, string> {
  return new Map(
    photos.map(({ id, water, peg, place }, index) => {
      const at = (peg ?? place ?? 'water').replace(/[^A-Za-z0-9-]+/g, '-');
      return [id, `${water}-${at}-${ref}-${index + 1}.jpg`.toLowerCase()];
    }),
  );
}

/** A photo that shows a hazard is named in the hazard; any other goes on the peg's list. */
function photoEdits(round: RoundFile, key: string, names: ReadonlyMap<string, string>): FieldEdit[] {
  const ofHazards = new Set(round.pegs.flatMap(({ hazards }) => hazards.map(({ photo }) => photo ?? '')));
  return round.photos
    .filter(
      ({ water, peg, id }) => peg !== undefined && pegKey(water, peg) === key && !ofHazards.has(id) && names.has(id),
    )
    .map((photo) => ({ kind: 'append', path: ['photos'], item: { file: names.get(photo.id)!, alt: photo.shows } }));
}
