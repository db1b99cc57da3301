import { spawn } from 'node:child_process';
import { extname, join } from 'node:path';
import { EXIT } from '../command-io.ts';

/** The command itself: `venue.ts` in the project, the compiled `venue.js` in a package. */
const COMMAND = join(import.meta.dirname, '..', `venue${extname(import.meta.filename)}`);

/** What one guide of an association is built from and where it goes. */
export interface MemberBuild {
  readonly folder: string;
  readonly out: string;
  readonly address: string;
  /** Threads its ratings may use. */
  readonly threads: number;
}

/**
 * Builds one guide in a process of its own: the pages of a guide are one program with one venue, and what goes wrong in one is
 * kept from the others.
 * @returns the exit code and what was printed for a person
 */
export function buildMember(
  { folder, out, address, threads }: MemberBuild,
  environment: Readonly<Record<string, string | undefined>>,
): Promise<{ readonly code: number; readonly said: string }> {
  const child = spawn(
    process.execPath,
    [COMMAND, 'build', '--venue', folder, '--out', out, '--address', address, '--quiet'],
    {
      env: { ...environment, SITE_ADDRESS: undefined, PEG_ATLAS_THREADS: String(threads) },
      stdio: ['ignore', 'ignore', 'pipe'],
      windowsHide: true,
    },
  );
  let said = '';
  child.stderr.on('data', (chunk: Buffer) => {
    said += chunk.toString();
  });
  return new Promise((resolve) => {
    child.on('error', (error) => resolve({ code: EXIT.program, said: error.message }));
    child.on('close', (code) => resolve({ code: code ?? EXIT.program, said: said.trim() }));
  });
}
