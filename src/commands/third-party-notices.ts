import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** The file of a guide that says whose work its scripts hold. */
export const NOTICES_PATH = 'third-party-notices.txt';

const HEAD = `This guide was made with Peg Atlas (MIT licence, the Peg Atlas contributors).
Its scripts hold parts of the works below, each under its own licence.
`;

/** A package whose code went into a script, with the licence it came under. */
interface Bundled {
  readonly name: string;
  readonly version: string;
  readonly licence: string;
  readonly text: string;
}

/** A Vite plugin that writes the licences of every package that the browser's scripts were bundled from, beside them. */
export function thirdPartyNotices() {
  const modules = new Set<string>();
  return {
    name: 'peg-atlas-third-party-notices',
    applyToEnvironment: ({ name }: { readonly name: string }) => name === 'client',
    generateBundle(
      this: { emitFile(file: { type: 'asset'; fileName: string; source: string }): string },
      _options: unknown,
      bundle: Readonly<Record<string, { readonly type: string; readonly moduleIds?: readonly string[] }>>,
    ) {
      for (const { moduleIds = [] } of Object.values(bundle)) for (const id of moduleIds) modules.add(id);
      this.emitFile({ type: 'asset', fileName: NOTICES_PATH, source: noticesText(modules) });
    },
  };
}

/** The licences of the packages that modules belong to, by name; our own modules belong to none. */
export function noticesText(modules: Iterable<string>): string {
  const packages = new Map<string, Bundled>();
  for (const id of modules) {
    const bundled = packageOf(id);
    if (bundled !== null) packages.set(`${bundled.name} ${bundled.version}`, bundled);
  }
  const inOrder = [...packages].sort(([a], [b]) => (a < b ? -1 : 1));
  return [
    HEAD,
    ...inOrder.map(([title, { licence, text }]) => `${'-'.repeat(72)}\n${title} (${licence})\n\n${text.trim()}\n`),
  ].join('\n');
}

/** The package a module's file lies in, null for a file of this program and for what no file holds. */
function packageOf(id: string): Bundled | null {
  const file = id.replace(/^\0/, '').replace(/\?.*$/, '');
  const found = /^(.*[\\/]node_modules[\\/](?:@[^\\/]+[\\/])?[^\\/]+)[\\/]/.exec(file)?.[1];
  if (found === undefined || !existsSync(join(found, 'package.json'))) return null;
  const { name, version, license } = JSON.parse(readFileSync(join(found, 'package.json'), 'utf8')) as {
    readonly name?: string;
    readonly version?: string;
    readonly license?: string;
  };
  if (name === undefined || name === 'peg-atlas') return null;
  return { name, version: version ?? '', licence: license ?? 'see its text', text: licenceText(found) };
}

function licenceText(folder: string): string {
  const name = readdirSync(folder).find((entry) => /^(?:licen[cs]e|copying)(?:[.-].*)?$/i.test(entry));
  if (name !== undefined) return readFileSync(join(folder, name), 'utf8');
  return 'No text of the licence came with this package.';
}
