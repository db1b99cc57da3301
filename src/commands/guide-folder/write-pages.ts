import { readdirSync } from 'node:fs';
import { rm } from 'node:fs/promises';
import { resolve } from 'node:path';
import { build as buildSite } from 'astro';
import { cacheFolder } from '../../atlas/cache-folder.ts';
import type { SiteAddress } from '../../domain/site-address.ts';
import { pegAtlas } from '../../integration.ts';
import { PACKAGE_FOLDER } from '../package-folder.ts';
import { bringOut, openWorkshop } from './workshop.ts';

/**
 * Has Astro write the pages. They run from the folder Astro works in and find the program's packages from there, so that
 * folder lies with the program and the guide is brought out of it; meanwhile the process stands there too, since Astro asks
 * whether its folder begins with the name of the one the process stands in.
 * @param progress told every second how many pages there are by then
 */
export async function writePages(
  folder: string,
  address: SiteAddress,
  to: string,
  progress?: (pages: number) => void,
): Promise<void> {
  process.env.VENUE_DIR = folder;
  process.env.PEG_ATLAS_CACHE = resolve(cacheFolder());
  process.env.ASTRO_TELEMETRY_DISABLED = '1';
  const callerStands = process.cwd();
  const workshop = openWorkshop();
  const ticking = progress === undefined ? undefined : setInterval(() => progress(pagesIn(workshop)), 1000);
  try {
    process.chdir(PACKAGE_FOLDER);
    await buildSite({
      root: PACKAGE_FOLDER,
      configFile: false,
      integrations: [pegAtlas({ folder, address })],
      outDir: workshop,
      logLevel: 'warn',
    });
    bringOut(workshop, to);
  } finally {
    clearInterval(ticking);
    process.chdir(callerStands);
    await rm(workshop, { recursive: true, force: true });
  }
}

function pagesIn(workshop: string): number {
  return readdirSync(workshop, { recursive: true, encoding: 'utf8' }).filter((path) => path.endsWith('.html')).length;
}
