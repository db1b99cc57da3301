import { existsSync, readdirSync, realpathSync, statSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { liesInside } from './lies-inside.ts';
import { PACKAGE_FOLDER } from './package-folder.ts';
import { UsageError } from './read-arguments.ts';

const OWN_FOLDER = 'dist';
/** Written by every build and by hardly anything else: a folder that holds it is a guide, and may be replaced. */
const MARK_OF_A_GUIDE = 'offline-list.json';

/**
 * The folder a build may replace with a new guide: `dist` where the caller stands, unless `option` names another. A build takes the place of
 * everything that stands there, so nothing but an earlier guide may.
 * @throws UsageError where the folder is, holds or lies in the venue folder or holds the project, or is neither new, empty nor a guide.
 */
export function outputFolder(option: string | undefined, venueFolder: string, usual = OWN_FOLDER): string {
  const out = resolve(option ?? usual);
  const place = realPlace(out);
  const venue = realPlace(venueFolder);
  if (liesInside(place, venue) || liesInside(venue, place)) {
    throw new UsageError(
      `Unexpected --out ${out}, expected a folder apart from the venue folder ${venueFolder}: the guide would take its place.`,
    );
  }
  if (liesInside(place, realPlace(PACKAGE_FOLDER)) || liesInside(place, realPlace('.'))) {
    throw new UsageError(`Unexpected --out ${out}, expected a folder that does not hold this project.`);
  }
  if (option !== undefined && existsSync(out) && !mayBeReplaced(out)) {
    throw new UsageError(
      `Unexpected --out ${out}, expected a folder that is new, empty or holds an earlier guide: what is in it would be lost.`,
    );
  }
  return out;
}

function mayBeReplaced(folder: string): boolean {
  if (!statSync(folder).isDirectory()) return false;
  return existsSync(join(folder, MARK_OF_A_GUIDE)) || readdirSync(folder).length === 0;
}

/** The path behind all links; of a path that is still to be made, as far as it exists. */
function realPlace(path: string): string {
  if (existsSync(path)) return realpathSync(path);
  const parent = dirname(path);
  return parent === path ? path : join(realPlace(parent), basename(path));
}
