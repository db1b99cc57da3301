import { join } from 'node:path';
import { projectRoot } from './project-root.ts';

/**
 * Where work done before is kept: `PEG_ATLAS_CACHE`, else `.cache/peg-atlas` in the project's folder, which `npm ci` leaves alone and
 * a build server can keep from one run to the next. All of it may be deleted at any time.
 */
export function cacheFolder(environment: NodeJS.ProcessEnv = process.env): string {
  return environment.PEG_ATLAS_CACHE || join(projectRoot(), '.cache', 'peg-atlas');
}
