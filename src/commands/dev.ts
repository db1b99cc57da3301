import { sep } from 'node:path';
import { type AstroIntegration, dev as serveSite } from 'astro';
import { type CommandIo, EXIT } from './command-io.ts';
import { type Followed, FollowedFolder } from './follow/follow-folder.ts';
import { overlayOf } from './follow/overlay.ts';
import { RequestsAtWork } from './follow/requests-at-work.ts';
import { typed } from './package-folder.ts';
import { printFaults } from './print-faults.ts';
import { readArguments, UsageError } from './read-arguments.ts';
import { siteAddress } from './site-address.ts';
import { siteConfig } from './site-config.ts';
import { venueFolder } from './venue-folder.ts';

const PORT = 4321;

/** Vite's server, as Astro hands it over. */
type ViteDevServer = Parameters<NonNullable<AstroIntegration['hooks']['astro:server:setup']>>[0]['server'];

/**
 * `dev [--venue FOLDER] [--port N]`: serves the guide as it is written and follows the folder: an edited record shows at
 * once, with the worth there was, marked so, until it is worked out anew; a fault shows here and over the page, which
 * keeps what was whole.
 */
export async function run(args: readonly string[], io: CommandIo): Promise<number> {
  const { values } = readArguments(args, { venue: { type: 'string' }, port: { type: 'string' } });
  const port = Number(values.port ?? PORT);
  if (!Number.isInteger(port) || port < 1 || port > 65_535) {
    throw new UsageError(`Unexpected port "${values.port}", expected a whole number from 1 to 65535.`);
  }
  const folder = venueFolder(values.venue, io.environment);
  process.env.VENUE_DIR = folder;
  process.env.ASTRO_TELEMETRY_DISABLED = '1';
  const address = siteAddress({ ...io.environment, VENUE_DIR: folder });
  const requests = new RequestsAtWork();
  let vite: ViteDevServer | undefined;
  let isWhole = false;
  let overlay: ReturnType<typeof overlayOf> | null = null;
  const followed = new FollowedFolder(folder, (what) => {
    overlay = what.kind === 'faults' ? overlayOf(folder, what) : what.kind === 'shown' ? null : overlay;
    isWhole ||= what.kind === 'shown';
    tell(what, folder, io);
    const own = vite;
    if (own === undefined) return;
    if (overlay !== null) own.environments.client.hot.send({ type: 'error', err: overlay });
    else requests.whenIdle(() => showAnew(own));
  });
  await followed.read();
  if (!isWhole) {
    io.printError(`There is nothing to show until these are mended: then ${typed('dev')} again.`);
    return EXIT.faults;
  }
  const server = await serveSite({
    ...siteConfig(address),
    configFile: false,
    logLevel: 'warn',
    server: { port, host: '127.0.0.1' },
    integrations: [
      {
        name: 'peg-atlas-follow',
        hooks: {
          'astro:server:setup': ({ server: own }) => {
            vite = own;
            own.middlewares.use((_request, response, next) => {
              requests.begin(response);
              next();
            });
            own.watcher.add(folder);
            own.watcher.on('all', (_event, path) => {
              if (path.startsWith(folder + sep)) followed.changed();
            });
            // A page that is opened while there is a fault is told of it too.
            own.environments.client.hot.on('vite:client:connect', () => {
              if (overlay !== null) own.environments.client.hot.send({ type: 'error', err: overlay });
            });
          },
        },
      },
    ],
  });
  io.print(
    `The guide is at http://localhost:${server.address.port}${address.base} and follows ${folder} (stop it with Ctrl+C)`,
  );
  await new Promise<void>((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => resolve());
  });
  followed.stop();
  await server.stop();
  return EXIT.clean;
}

/** Has the pages run anew, so that they draw from what was handed over, and the browser ask for them. */
function showAnew(vite: ViteDevServer): void {
  for (const environment of Object.values(vite.environments)) {
    environment.hot.send({ type: 'full-reload', path: '*' });
  }
}

function tell(what: Followed, folder: string, io: CommandIo): void {
  if (what.kind === 'rated') {
    io.printError('Worth is of the log as it is now.');
    return;
  }
  printFaults(folder, what.read.faults, what.read.leftOut, io);
  if (what.kind === 'faults') {
    io.printError('The page keeps what was whole.');
    return;
  }
  io.printError(what.areRatingsOld ? 'Shown; worth is being worked out anew.' : 'Shown.');
}
