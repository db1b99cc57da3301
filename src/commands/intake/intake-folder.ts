import type { Fault } from '../../content/fault.ts';
import { readSettled } from '../../content/folder-change/read-settled.ts';
import { writeChange } from '../../content/folder-change/write-change.ts';
import type { KeepOpen } from '../../content/intake/close-pegs.ts';
import { errorsOf, newErrors, withChanges } from '../../content/intake/faults-after.ts';
import { folderFiles } from '../../content/intake/folder-files.ts';
import type { Choose } from '../../content/intake/intake-choice.ts';
import { type IntakePlan, planIntake, type RoundToTake } from '../../content/intake/plan-intake.ts';
import { readFolder } from '../../content/read-folder.ts';
import type { VenueFiles } from '../../content/venue-files.ts';
import { latestDayOnEarth } from './latest-day.ts';

/** One run of the intake on one folder: what was read, and what is asked of it. */
export class Intake {
  /** Where the folder is. */
  readonly folder: string;
  readonly #files: VenueFiles;
  readonly #rounds: readonly RoundToTake[];
  readonly #without: ReadonlySet<string>;
  readonly #keepOpen: ReadonlyMap<string, KeepOpen>;
  #choose: Choose = () => undefined;
  #close: ReadonlySet<string> = new Set();
  #errorsNow: readonly Fault[] | undefined;

  private constructor(
    folder: string,
    files: VenueFiles,
    rounds: readonly RoundToTake[],
    without: ReadonlySet<string>,
    keepOpen: ReadonlyMap<string, KeepOpen>,
  ) {
    this.folder = folder;
    this.#files = files;
    this.#rounds = rounds;
    this.#without = without;
    this.#keepOpen = keepOpen;
  }

  /** Reads the folder as it is now. */
  static async open(
    folder: string,
    rounds: readonly RoundToTake[],
    without: ReadonlySet<string>,
    keepOpen: ReadonlyMap<string, KeepOpen>,
  ): Promise<Intake> {
    return new Intake(folder, await readSettled(folder, () => readFolder(folder)), rounds, without, keepOpen);
  }

  /** Works out what would change; `choose` stands for later plans too. */
  plan(choose: Choose = this.#choose): IntakePlan {
    this.#choose = choose;
    return planIntake(folderFiles(this.folder, this.#files), this.#rounds, {
      today: latestDayOnEarth(),
      without: this.#without,
      close: this.#close,
      keepOpen: this.#keepOpen,
      choose,
    });
  }

  /** From now on plans close these pegs. */
  close(pegs: readonly string[]): void {
    this.#close = new Set(pegs);
  }

  /** Errors the plan would bring into the folder. */
  faultsAfter({ files }: IntakePlan): readonly Fault[] {
    this.#errorsNow ??= errorsOf(this.#files);
    return newErrors(this.#errorsNow, errorsOf(withChanges(this.#files, files)));
  }

  /** Writes the plan, all or nothing. Returns a sentence where it could not. */
  write({ files }: IntakePlan): string | null {
    return writeChange(this.folder, files);
  }
}
