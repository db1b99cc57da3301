import { fileURLToPath } from 'node:url';
import type { AstroIntegration, AstroIntegrationLogger } from 'astro';
import { AstroError } from 'astro/errors';
import { handedOver, handOver } from './atlas/handed-over.ts';
import { siteAddress } from './commands/build-address.ts';
import { FollowedPages } from './commands/follow/followed-pages.ts';
import { writeHostFiles } from './commands/guide-folder/host-files.ts';
import { photographsLast } from './commands/guide-folder/photographs-last.ts';
import { severalAtOnce } from './commands/guide-folder/several-at-once.ts';
import { workerScript, writeOfflineList } from './commands/offline-list.ts';
import { siteConfig } from './commands/site-config.ts';
import { venueFolder } from './commands/venue-folder.ts';
import type { Fault } from './content/fault.ts';
import { formatFaults } from './content/format-fault.ts';
import { loadVenue } from './content/load-venue.ts';
import type { SiteAddress } from './domain/site-address.ts';
import { surveyVenue } from './ground/survey-venue.ts';

/** What a guide is made of, and where it will be served; what is left out is as `VENUE_DIR` and `SITE_ADDRESS` say. */
export interface GuideOptions {
  readonly folder?: string;
  readonly address?: SiteAddress;
  /** Of a server: the pages that follow the folder, where their caller has read it already. */
  readonly pages?: FollowedPages;
}

/**
 * A venue's guide as an extension of Astro: its settings, the check of the folder before anything is written, pages that
 * follow the folder while they are served, and what makes a built guide readable without a signal. The folder is read once.
 */
export function pegAtlas(options: GuideOptions = {}): AstroIntegration {
  const folder = venueFolder(options.folder, process.env);
  let base = '/';
  let script: Promise<string> | undefined;
  let { pages } = options;
  return {
    name: 'peg-atlas',
    hooks: {
      'astro:config:setup': async ({ command, updateConfig, logger }) => {
        process.env.VENUE_DIR = folder;
        if (command === 'build' && handedOver(folder) === null) await readForBuild(folder, logger);
        if (command === 'dev' && pages === undefined) {
          pages = new FollowedPages(folder, (what) => {
            if (what.kind === 'faults') logger.error(sentences(what.read.faults));
          });
          if (!(await pages.read())) throw notWhole(folder);
        }
        const address = options.address ?? siteAddress({ ...process.env, VENUE_DIR: folder });
        base = address.base;
        updateConfig(siteConfig(address));
      },
      'astro:build:start': ({ setPrerenderer }) => {
        script = workerScript(base);
        // Told when the list is written; a build that fails before that asks for no script.
        script.catch(() => undefined);
        setPrerenderer((pages) => photographsLast(severalAtOnce(pages)));
      },
      'astro:server:setup': ({ server }) => pages?.attach(server),
      'astro:server:done': () => pages?.stop(),
      'astro:build:done': async ({ dir }) => {
        const guide = fileURLToPath(dir);
        await writeOfflineList(guide, base, script);
        await writeHostFiles(guide, base);
      },
    },
  };
}

/** Reads and checks a folder, and hands what is whole over to the pages. */
async function readForBuild(folder: string, logger: AstroIntegrationLogger): Promise<void> {
  const read = await loadVenue(folder);
  if (read.faults.length > 0) {
    const said = sentences(read.faults);
    if (read.venue === null) logger.error(said);
    else logger.warn(said);
  }
  if (read.venue === null) throw notWhole(folder);
  handOver({ folder, read, survey: surveyVenue(read.venue) });
}

function sentences(faults: readonly Fault[]): string {
  return formatFaults(faults).join('\n');
}

/** Without a stack: what is wrong is in the folder, and its faults have been told. */
function notWhole(folder: string): AstroError {
  const words = `The venue folder ${folder} has faults: nothing is made of it.`;
  return Object.assign(new AstroError(words, 'Mend them and try again.'), { stack: '' });
}
