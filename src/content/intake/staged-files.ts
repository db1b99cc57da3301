import type { NewFile } from '../folder-change/commit-change.ts';

/** The files of a venue folder as an intake sees them. */
export interface FolderFiles {
  /** Bytes of a file by its path inside the folder, null where there is none. */
  readonly bytes: (path: string) => Uint8Array | null;
  /** The same as UTF-8 text, byte order mark included. */
  readonly text: (path: string) => string | null;
  /** Names in `rounds/`. */
  readonly rounds: readonly string[];
  /** Names of the records in `pegs/<water>/`, without their ending; empty for a water that is not there. */
  readonly pegsOf: (water: string) => readonly string[];
}

/** Files as they would be after the changes noted so far; nothing is written. */
export class StagedFiles {
  readonly #folder: FolderFiles;
  readonly #after = new Map<string, Uint8Array | null>();

  constructor(folder: FolderFiles) {
    this.#folder = folder;
  }

  text(path: string): string | null {
    const staged = this.#after.get(path);
    if (staged === undefined) return this.#folder.text(path);
    return staged === null ? null : new TextDecoder('utf-8', { ignoreBOM: true }).decode(staged);
  }

  pegsOf(water: string): readonly string[] {
    return this.#folder.pegsOf(water);
  }

  put(path: string, content: string | Uint8Array): void {
    this.#after.set(path, typeof content === 'string' ? new TextEncoder().encode(content) : content);
  }

  /** Takes a file away, unless something was put in its place before or is afterwards. */
  takeAway(path: string): void {
    if (!this.#after.has(path)) this.#after.set(path, null);
  }

  /** What differs from the folder; the files of `rounds/` last, since readers go by them. */
  changed(): NewFile[] {
    const files = [...this.#after].map(([path, bytes]) => ({ path, bytes, before: this.#folder.bytes(path) }));
    const isRound = ({ path }: NewFile): number => (path.startsWith('rounds/') ? 1 : 0);
    return files
      .filter(({ bytes, before }) => (bytes === null || before === null ? bytes !== before : !sameBytes(bytes, before)))
      .sort((a, b) => isRound(a) - isRound(b));
  }
}

function sameBytes(a: Uint8Array, b: Uint8Array): boolean {
  return Buffer.compare(a, b) === 0;
}
