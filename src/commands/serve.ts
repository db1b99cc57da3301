import { existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { preview } from 'astro';
import { type CommandIo, EXIT } from './command-io.ts';
import { readArguments, UsageError } from './read-arguments.ts';
import { siteAddress } from './site-address.ts';
import { venueFolder } from './venue-folder.ts';

const PROJECT = fileURLToPath(new URL('../..', import.meta.url));
const FIRST_PORT = 4321;

/** `serve [--port N] [--out FOLDER]`: serves the built guide on this machine until it is stopped, and prints its address. */
export async function run(args: readonly string[], io: CommandIo): Promise<number> {
  const { values } = readArguments(args, {
    venue: { type: 'string' },
    out: { type: 'string' },
    port: { type: 'string' },
  });
  const port = Number(values.port ?? io.environment.PORT ?? FIRST_PORT);
  if (!Number.isInteger(port) || port < 1 || port > 65_535) {
    throw new UsageError(`Unexpected port "${values.port}", expected a whole number from 1 to 65535.`);
  }
  const out = resolve(PROJECT, values.out ?? 'dist');
  if (!existsSync(join(out, 'index.html'))) {
    io.printError(`There is no guide in ${values.out ?? 'dist'} yet. Build it first: npm run build`);
    return EXIT.faults;
  }
  process.env.VENUE_DIR = venueFolder(values.venue, io.environment);
  const server = await preview({ root: PROJECT, outDir: out, logLevel: 'error', server: { port, host: '127.0.0.1' } });
  io.print(`The guide is at http://localhost:${server.port}${siteAddress(process.env).base} (stop it with Ctrl+C)`);
  await server.closed();
  return EXIT.clean;
}
