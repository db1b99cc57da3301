import { once } from 'node:events';
import { existsSync } from 'node:fs';
import type { Server } from 'node:http';
import { join, resolve } from 'node:path';
import { typed } from '../content/typed-command.ts';
import { type CommandIo, EXIT } from './command-io.ts';
import { baseOfGuide } from './guide-folder/guide-base.ts';
import { recoverGuide } from './guide-folder/replace-guide.ts';
import { guideServer } from './guide-folder/serve-guide.ts';
import { readArguments, UsageError } from './read-arguments.ts';

const FIRST_PORT = 4321;
const PORTS_TRIED = 20;

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
  const out = resolve(values.out ?? 'dist');
  recoverGuide(out);
  if (!existsSync(join(out, 'index.html'))) {
    io.printError(`There is no guide in ${values.out ?? 'dist'} yet. Build it first: ${typed('build')}`);
    return EXIT.faults;
  }
  const base = baseOfGuide(out);
  const server = guideServer(out, base);
  const served = await listen(server, port);
  if (served === null) {
    io.printError(`Port ${port} and those behind it are taken. Name another with --port.`);
    return EXIT.faults;
  }
  io.print(`The guide is at http://localhost:${served}${base} (stop it with Ctrl+C)`);
  await once(server, 'close');
  return EXIT.clean;
}

/** Listens on the first free port from `first` on, on this machine alone; null where none of the next is free. */
async function listen(server: Server, first: number): Promise<number | null> {
  for (let port = first; port < Math.min(first + PORTS_TRIED, 65_536); port++) {
    const isFree = await new Promise<boolean>((resolveListen, reject) => {
      server.once('error', (error: NodeJS.ErrnoException) => {
        if (error.code === 'EADDRINUSE') resolveListen(false);
        else reject(error);
      });
      server.listen(port, '127.0.0.1', () => {
        server.removeAllListeners('error');
        resolveListen(true);
      });
    });
    if (isFree) return port;
  }
  return null;
}
