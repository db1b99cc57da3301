import { join } from 'node:path';
import { hiddenCharacterAt } from '../../domain/hidden-characters.ts';
import type { Disk } from './disk.ts';

/**
 * Why a file of a change may not be written, or null. A path stays inside the folder, names no hidden file, and no step of
 * it is a link: what is behind a link lies elsewhere.
 * @param path inside the folder, with forward slashes
 */
export function whyUnsafe(folder: string, path: string, disk: Disk): string | null {
  const steps = path.split('/');
  const isInside = steps.every((step) => step !== '' && !step.startsWith('.') && !/[\\:]/.test(step));
  if (!isInside || hiddenCharacterAt(path) !== -1) return `The path "${path}" does not lie inside the venue folder.`;
  for (let length = 1; length <= steps.length; length++) {
    const part = steps.slice(0, length).join('/');
    if (disk.isLink(join(folder, part))) {
      return `${part} is a link to another place. Replace it with the ${length === steps.length ? 'file' : 'folder'} itself and run this again.`;
    }
  }
  return null;
}
