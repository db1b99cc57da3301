import { join } from 'node:path';

/**
 * Where work done before is kept: `PEG_ATLAS_CACHE`, else `.cache/peg-atlas` where the caller stands, which installing leaves
 * alone and a build server can keep from one run to the next. All of it may be deleted at any time.
 */
export function cacheFolder(environment: NodeJS.ProcessEnv = process.env): string {
  return environment.PEG_ATLAS_CACHE || join(process.cwd(), '.cache', 'peg-atlas');
}
