import { spawnSync } from 'node:child_process';
import { copyFileSync, linkSync, mkdirSync, readdirSync, readFileSync, symlinkSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const PROJECT = fileURLToPath(new URL('../..', import.meta.url));

/**
 * Packs this project as `npm pack` does and installs it in an empty folder: the tarball unpacked, and beside it the packages
 * that the lock file counts as production's, linked from here, so that no registry is asked and no development tool is there.
 * @returns the command it brings
 */
export function installPackage(folder: string): string {
  const packed = run('npm', ['pack', '--pack-destination', folder, '--json', '--silent'], PROJECT);
  const [{ filename }] = JSON.parse(packed.slice(packed.indexOf('['))) as [{ filename: string }];
  const place = join(folder, 'node_modules', 'peg-atlas');
  mkdirSync(place, { recursive: true });
  run('tar', ['-xzf', join(folder, filename), '--strip-components=1', '-C', place], folder);
  for (const path of productionPackages()) {
    if (path.split('node_modules/').length === 2) linkTree(join(PROJECT, path), join(folder, path));
  }
  const command = join(folder, 'node_modules', '.bin', 'peg-atlas');
  mkdirSync(dirname(command));
  symlinkSync(join(place, 'lib', 'commands', 'venue.js'), command);
  return command;
}

/** Paths of the packages of this machine that are installed where development tools are left out; nested ones come with theirs. */
function productionPackages(): readonly string[] {
  const { packages } = JSON.parse(readFileSync(join(PROJECT, 'package-lock.json'), 'utf8')) as {
    packages: Readonly<Record<string, { readonly dev?: boolean }>>;
  };
  const here = new Set(readdirSync(join(PROJECT, 'node_modules')));
  return Object.entries(packages).flatMap(([path, { dev }]) => {
    const [, first = ''] = path.split('/');
    return path !== '' && dev !== true && here.has(first) ? [path] : [];
  });
}

/** The same files under another folder; linked, so that hundreds of megabytes cost nothing. */
function linkTree(from: string, to: string): void {
  let entries: ReturnType<typeof entriesOf>;
  try {
    entries = entriesOf(from);
  } catch {
    // An optional package of another system: not here, not needed.
    return;
  }
  mkdirSync(to, { recursive: true });
  for (const entry of entries) {
    const [source, copy] = [join(from, entry.name), join(to, entry.name)];
    if (entry.isDirectory()) linkTree(source, copy);
    else if (entry.isFile()) linkOrCopy(source, copy);
  }
}

function entriesOf(folder: string) {
  return readdirSync(folder, { withFileTypes: true });
}

function linkOrCopy(source: string, copy: string): void {
  try {
    linkSync(source, copy);
  } catch {
    copyFileSync(source, copy);
  }
}

function run(command: string, args: readonly string[], cwd: string): string {
  const { status, stdout, stderr } = spawnSync(command, [...args], { cwd, encoding: 'utf8' });
  if (status !== 0) throw new Error(`${command} ${args.join(' ')} ended with ${status}: ${stderr}${stdout}`);
  return stdout;
}
