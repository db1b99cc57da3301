import { dev as serveSite } from 'astro';
import { pegAtlas } from '../integration.ts';
import { siteAddress } from './build-address.ts';
import { type CommandIo, EXIT } from './command-io.ts';
import type { Followed } from './follow/follow-folder.ts';
import { FollowedPages } from './follow/followed-pages.ts';
import { PACKAGE_FOLDER } from './package-folder.ts';
import { printFaults, typedFor } from './print-faults.ts';
import { readArguments, UsageError } from './read-arguments.ts';
import { venueFolder } from './venue-folder.ts';

const PORT = 4321;

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
  let isShowing = false;
  const pages = new FollowedPages(folder, (what) => tell(what, folder, isShowing, io));
  if (!(await pages.read())) {
    io.printError(`There is nothing to show until these are mended: then ${typedFor('dev', folder)} again.`);
    return EXIT.faults;
  }
  isShowing = true;
  const server = await serveSite({
    root: PACKAGE_FOLDER,
    configFile: false,
    integrations: [pegAtlas({ folder, address, pages })],
    logLevel: 'warn',
    server: { port, host: '127.0.0.1' },
  });
  io.print(
    `The guide is at http://localhost:${server.address.port}${address.base} and follows ${folder} (stop it with Ctrl+C)`,
  );
  readyPages(`http://127.0.0.1:${server.address.port}${address.base}`);
  await new Promise<void>((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => resolve());
  });
  await server.stop();
  return EXIT.clean;
}

/** The first page that is asked for has the modules of nearly all of them made, for seconds: better before somebody comes. */
function readyPages(address: string): void {
  fetch(address)
    .then((page) => page.arrayBuffer())
    // Whoever comes is told what is wrong.
    .catch(() => undefined);
}

/** @param isShowing whether there are pages already that a fault leaves as they are */
function tell(what: Followed, folder: string, isShowing: boolean, io: CommandIo): void {
  if (what.kind === 'rated') {
    io.printError('Worth is of the log as it is now.');
    return;
  }
  printFaults(folder, what.read.faults, what.read.leftOut, io);
  if (what.kind === 'faults') {
    if (isShowing) io.printError('The page keeps what was whole.');
    return;
  }
  io.printError(what.areRatingsOld ? 'Shown; worth is being worked out anew.' : 'Shown.');
}
