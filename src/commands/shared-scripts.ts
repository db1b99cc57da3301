/** What a bundler tells of a module: who imports it, other than when it is needed. */
interface ModuleInfo {
  readonly importers: readonly string[];
}
type GetModuleInfo = (id: string) => ModuleInfo | null;

/** The script that stands on every page (`src/layouts/Page.astro`). */
const EVERY_PAGE = /[\\/]layouts[\\/]Page\.astro\?/;

/**
 * How the browser's scripts are cut into files: what the script of every page rests on is one file. A dozen small ones, each
 * compressed by itself, were a fifth more bytes before the first tap. What acts by itself stays in that script, so that the
 * scripts of a page still run in their order.
 */
export const SHARED_SCRIPTS = {
  groups: [
    {
      debugName: 'every page',
      // Asked of the bundler's own object: its method does nothing away from it.
      name: (id: string, bundle: { getModuleInfo: GetModuleInfo }) =>
        isBelowEveryPage(id, (module) => bundle.getModuleInfo(module)) ? 'every-page' : null,
    },
  ],
};

/** Whether the script of every page comes to a module by way of another. */
export function isBelowEveryPage(id: string, getModuleInfo: GetModuleInfo): boolean {
  const importersOf = (module: string) => getModuleInfo(module)?.importers ?? [];
  const isEntry = (module: string) => EVERY_PAGE.test(module);
  if (isEntry(id) || importersOf(id).some(isEntry)) return false;
  const seen = new Set([id]);
  for (const module of seen) for (const importer of importersOf(module)) seen.add(importer);
  return [...seen].some(isEntry);
}
