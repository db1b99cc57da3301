import { renameSync } from 'node:fs';

/** What Windows answers while another program (a virus scanner, an editor, a synchronised folder) holds a file open. */
const HELD = new Set(['EACCES', 'EBUSY', 'EPERM']);
/** Waits between the tries, in milliseconds: a scanner lets go within a second or two. */
const WAITS = [20, 50, 100, 200, 400, 800];

/** What a patient move touches of the world outside, so that a test can stand in for Windows. */
interface Patience {
  readonly platform: NodeJS.Platform;
  readonly rename: (from: string, to: string) => void;
  readonly wait: (milliseconds: number) => void;
}

const HERE: Patience = { platform: process.platform, rename: renameSync, wait };

/**
 * Moves a file or folder over what stands there. Windows refuses that while somebody has either of them open, which is mostly
 * over in a moment: there it is tried again for up to a second and a half, elsewhere a refusal is meant.
 * @throws what the system answers at the last try
 */
export function renamePatiently(from: string, to: string, { platform, rename, wait }: Patience = HERE): void {
  for (const milliseconds of platform === 'win32' ? WAITS : []) {
    try {
      rename(from, to);
      return;
    } catch (error) {
      if (!HELD.has((error as NodeJS.ErrnoException).code ?? '')) throw error;
      wait(milliseconds);
    }
  }
  rename(from, to);
}

/** Blocks: nothing else of this process may run between two steps of a change. */
function wait(milliseconds: number): void {
  Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, milliseconds);
}
