import { spawnSync } from 'node:child_process';
import { rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';

/** Compiles the command for a package: the same files as in `src/`, as JavaScript in `lib/`, since Node strips no types of a package. */
const PROJECT = fileURLToPath(new URL('..', import.meta.url));

rmSync(new URL('../lib', import.meta.url), { recursive: true, force: true });
const { status } = spawnSync(
  process.execPath,
  [createRequire(import.meta.url).resolve('typescript/bin/tsc'), '-p', '.ci/tsconfig.lib.json'],
  { cwd: PROJECT, stdio: 'inherit' },
);
process.exitCode = status ?? 1;
