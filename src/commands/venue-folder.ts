import { resolve } from 'node:path';
import type { CommandIo } from './command-io.ts';

/** Which venue folder a command works on: `--venue`, else `VENUE_DIR`, else `content` here. Returns an absolute path. */
export function venueFolder(option: string | undefined, environment: CommandIo['environment']): string {
  return resolve(option ?? (environment.VENUE_DIR || 'content'));
}
