import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { childEnvironment } from '../child-environment.ts';

const PROJECT = fileURLToPath(new URL('../..', import.meta.url));

/** Runs a `venue` command to its end. Rejects with what it printed where it fails. */
export function runVenue(args: readonly string[]): Promise<void> {
  const environment = childEnvironment();
  const child = spawn(process.execPath, ['src/commands/venue.ts', ...args], { cwd: PROJECT, env: environment });
  let printed = '';
  for (const stream of [child.stdout, child.stderr]) stream.on('data', (chunk: Buffer) => (printed += chunk));
  return new Promise((resolve, reject) => {
    child.on('exit', (code) => (code === 0 ? resolve() : reject(new Error(`venue ${args[0]} failed:\n${printed}`))));
  });
}
