import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The project's folder: the nearest one above this code that holds it, also when the code runs bundled. */
export function projectRoot(): string {
  for (const start of [dirname(fileURLToPath(import.meta.url)), process.cwd()]) {
    for (let folder = start; ; folder = dirname(folder)) {
      if (existsSync(join(folder, 'src', 'ratings', 'rate-venue.ts'))) return folder;
      if (dirname(folder) === folder) break;
    }
  }
  throw new Error('The project folder was not found: run this from inside it.');
}
