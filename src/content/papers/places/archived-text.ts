import { strFromU8, unzipSync } from 'fflate';
import { boundedArchive } from '../bounded-archive.ts';

/**
 * The text of the first file with an ending inside an archive (KMZ holds one KML).
 * @throws RangeError where there is none, or the archive is damaged or unpacks to too much
 */
export function archivedText(file: string, bytes: Uint8Array, ending: string): string {
  const archive = boundedArchive(bytes);
  if (archive === null) throw new RangeError(`${file} is damaged, or unpacks to more than 100 MB.`);
  const files = unzipSync(archive);
  const name = Object.keys(files)
    .sort()
    .find((path) => path.toLowerCase().endsWith(ending));
  if (name === undefined) throw new RangeError(`${file} holds no ${ending} file.`);
  return strFromU8(files[name]!);
}
