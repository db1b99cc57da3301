import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';

/** Files of a guide that speak to its host and to nobody who reads it. */
export const HOST_FILES = ['.nojekyll', '_headers'] as const;

/**
 * What hosts that read a file of headers are told, by address below the host. Every file is asked for anew, which costs an
 * answer of a few bytes where it has not changed: a closure is never held back by a cache.
 */
function headersText(base: string): string {
  return `${base}*
  Cache-Control: no-cache
  X-Content-Type-Options: nosniff
  Referrer-Policy: same-origin
  Content-Security-Policy: frame-ancestors 'none'
`;
}

/** Writes what hosts ask for into a built guide: headers, and a mark that its folders with an underscore are to be served. */
export async function writeHostFiles(guide: string, base: string): Promise<void> {
  await writeFile(join(guide, '.nojekyll'), '');
  await writeFile(join(guide, '_headers'), headersText(base));
}
