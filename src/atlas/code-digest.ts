import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { dirname, join, relative, resolve, sep } from 'node:path';

/** What a module imports or passes on; the formatter writes every such line the same way, types included. */
const FROM =
  /^(?:import|export)\b[^;]*?\bfrom '([^']+)'|^import '([^']+)'|\bimport\('([^']+)'\)|new URL\('([^']+\.ts)'/gm;

/**
 * A digest of everything that code from one module on depends on: every file that its imports reach, the versions of the packages
 * among them, and of Node. What nothing imports is not in it, whichever folder it stands in.
 *
 * @param root The project's folder, from which files are named
 */
export async function codeDigest(root: string, entry: string): Promise<string> {
  const files = new Map<string, string>();
  const packages = new Set<string>();
  const waiting = [resolve(root, entry)];
  for (let file = waiting.pop(); file !== undefined; file = waiting.pop()) {
    if (files.has(file)) continue;
    const text = await readFile(file, 'utf8');
    files.set(file, text);
    if (!file.endsWith('.ts')) continue;
    for (const match of text.matchAll(FROM)) {
      const specifier = (match[1] ?? match[2] ?? match[3] ?? match[4])!;
      if (specifier.startsWith('.')) waiting.push(resolve(dirname(file), specifier));
      else if (!specifier.startsWith('node:')) packages.add(packageName(specifier));
    }
  }
  const hash = createHash('sha256').update(process.version);
  // Named alike on every system, so that what one kept another finds.
  const named = [...files].map(([file, text]) => [relative(root, file).split(sep).join('/'), text] as const);
  for (const [name, text] of named.sort(([a], [b]) => (a < b ? -1 : 1))) hash.update(`\0${name}\0${text}`);
  for (const name of [...packages].sort()) hash.update(`\0${name}\0${await versionOf(root, name)}`);
  return hash.digest('hex');
}

function packageName(specifier: string): string {
  return specifier
    .split('/')
    .slice(0, specifier.startsWith('@') ? 2 : 1)
    .join('/');
}

/** The version of a package as a file of this folder would find it: in its own packages or those of a folder above. */
async function versionOf(root: string, name: string): Promise<string> {
  for (let folder = resolve(root); ; folder = dirname(folder)) {
    const file = join(folder, 'node_modules', name, 'package.json');
    if (existsSync(file)) return String(JSON.parse(await readFile(file, 'utf8')).version);
    if (dirname(folder) === folder) throw new Error(`The package ${name} was not found from ${root}.`);
  }
}
