import { spawn } from 'node:child_process';
import { type AddressInfo, createServer } from 'node:net';
import { fileURLToPath } from 'node:url';
import type { TestProject } from 'vitest/node';
import { childEnvironment } from '../child-environment.ts';
import { openBrowser } from './chromium.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** Address of the served demo guide, with a slash at its end. */
    siteUrl: string;
    /** Folder it was built into. */
    siteFolder: string;
  }
}

const PROJECT = fileURLToPath(new URL('../..', import.meta.url));
const SITE_FOLDER = fileURLToPath(new URL('../../node_modules/.cache/peg-atlas/test-site', import.meta.url));

/** Builds the demo guide with the real command, serves it with the real command, and tells the tests where it is. */
export default async function builtSite(project: TestProject): Promise<() => Promise<void>> {
  const environment = childEnvironment();
  // Opened once before the tests are: on a bare machine its package is unpacked by the first to ask, and two workers ask at once.
  await (await openBrowser()).close();
  await finished(start(['build', '--out', SITE_FOLDER], environment));
  const server = start(['serve', '--out', SITE_FOLDER, '--port', String(await freePort())], environment);
  const siteUrl = await printedAddress(server);
  project.provide('siteUrl', siteUrl);
  project.provide('siteFolder', SITE_FOLDER);
  return async () => {
    server.kill();
  };
}

/** A port nobody listens on, so that two runs on one machine do not meet. */
function freePort(): Promise<number> {
  return new Promise((resolve) => {
    const probe = createServer();
    probe.listen(0, '127.0.0.1', () => {
      const { port } = probe.address() as AddressInfo;
      probe.close(() => resolve(port));
    });
  });
}

function start(args: readonly string[], environment: NodeJS.ProcessEnv) {
  return spawn(process.execPath, ['src/commands/venue.ts', ...args], {
    cwd: PROJECT,
    env: environment,
    stdio: ['ignore', 'pipe', 'inherit'],
  });
}

function finished(child: ReturnType<typeof start>): Promise<void> {
  return new Promise((resolve, reject) => {
    child.stdout.resume();
    child.on('exit', (code) => (code === 0 ? resolve() : reject(new Error(`the build ended with exit code ${code}`))));
  });
}

function printedAddress(server: ReturnType<typeof start>): Promise<string> {
  return new Promise((resolve, reject) => {
    let printed = '';
    server.stdout.on('data', (chunk: Buffer) => {
      printed += chunk.toString();
      const address = /http:\/\/\S+/.exec(printed)?.[0];
      if (address !== undefined) resolve(address);
    });
    server.on('exit', (code) => reject(new Error(`the server ended with exit code ${code}`)));
  });
}
