import type { Content } from '../../content/content.ts';
import type { Fault } from '../../content/fault.ts';
import { type NewFile, tidyFolder } from '../../content/folder-change/commit-change.ts';
import { readSettled } from '../../content/folder-change/read-settled.ts';
import { whyNotWritten, writeChange } from '../../content/folder-change/write-change.ts';
import { formatFaults } from '../../content/format-fault.ts';
import { errorsOf, newErrors, withChanges } from '../../content/intake/faults-after.ts';
import { folderFiles } from '../../content/intake/folder-files.ts';
import type { FolderFiles } from '../../content/intake/staged-files.ts';
import { readContent } from '../../content/read-content.ts';
import { readFolder } from '../../content/read-folder.ts';
import type { VenueFiles } from '../../content/venue-files.ts';

/** A venue folder that a command reads once and changes once, all or nothing. */
export class FolderImport {
  /** Where it is. */
  readonly path: string;
  readonly content: Content;
  readonly files: FolderFiles;
  readonly texts: ReadonlyMap<string, string>;
  /** The folder as it was read. */
  readonly read: VenueFiles;
  readonly #errors: readonly Fault[];

  private constructor(folder: string, read: VenueFiles, content: Content) {
    this.path = folder;
    this.read = read;
    this.#errors = errorsOf(read);
    this.content = content;
    this.texts = read.texts;
    this.files = folderFiles(folder, read);
  }

  /** Reads the folder; says why where it has no settings that can be read. */
  static async open(
    folder: string,
  ): Promise<
    { readonly ok: true; readonly folder: FolderImport } | { readonly ok: false; readonly lines: readonly string[] }
  > {
    try {
      tidyFolder(folder);
    } catch (error) {
      return { ok: false, lines: [whyNotWritten(error)] };
    }
    const read = await readSettled(folder, () => readFolder(folder));
    const { value: content, faults } = readContent(read);
    if (content.settingsSource === null)
      return { ok: false, lines: formatFaults([...read.faults, ...faults].slice(0, 5)) };
    // A folder that means something else than is known here would be changed for the worse.
    const format = faults.filter(({ rule }) => rule === 'format-newer' || rule === 'format-unknown');
    if (format.length > 0) return { ok: false, lines: formatFaults(format) };
    return { ok: true, folder: new FolderImport(folder, read, content) };
  }

  /** Errors a change would bring into the folder. */
  faultsAfter(changed: readonly NewFile[]): readonly Fault[] {
    return newErrors(this.#errors, errorsOf(withChanges(this.read, changed)));
  }

  /** Writes a change, all or nothing. Returns a sentence where it could not. */
  write(changed: readonly NewFile[]): string | null {
    return writeChange(this.path, changed);
  }
}
