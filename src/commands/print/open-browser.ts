import { existsSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, LaunchOptions } from 'playwright-core';

/** Where Linux systems put a browser that can print; elsewhere the library knows the usual places of Chrome and Edge itself. */
const USUAL_PLACES = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome', '/snap/bin/chromium'];

/** What a browser carried as a package needs to start on a bare machine. */
const CARRIED_ARGUMENTS = ['--headless=shell', '--no-zygote', '--font-render-hinting=none'];

/**
 * Opens a browser that can print: the one named, else the one carried as a package, else one that is installed.
 * @param named its path, by `--browser` or `CHROMIUM`
 * @returns the browser, or in words what is missing and how to mend it
 */
export async function openPrintingBrowser(named: string | undefined): Promise<Browser | string> {
  const library = await importIfThere(() => import('playwright-core'));
  if (library === null)
    return 'Printing needs the package playwright-core, which is not here: npm install playwright-core';
  if (named !== undefined && !existsSync(named)) {
    return `There is no browser at ${named}. Give the path of Chromium, Chrome or Edge with --browser or the variable CHROMIUM.`;
  }
  let trouble = '';
  for (const options of named === undefined ? await installedBrowsers() : [{ executablePath: named }]) {
    try {
      return await library.chromium.launch(options);
    } catch (error) {
      trouble ||= error instanceof Error ? (error.message.split('\n')[0] ?? '') : String(error);
    }
  }
  return named === undefined
    ? 'No Chromium, Chrome or Edge was found on this machine. Install one, or give its path with --browser.'
    : `${named} could not be started as a browser that prints: ${trouble}`;
}

async function installedBrowsers(): Promise<readonly LaunchOptions[]> {
  const carried = await carriedBrowser();
  return [
    ...(carried === null ? [] : [carried]),
    ...USUAL_PLACES.filter((path) => existsSync(path)).map((executablePath) => ({ executablePath })),
    { channel: 'chrome' },
    { channel: 'msedge' },
  ];
}

/** The browser that is carried as a package (Linux on x64); null where there is none. */
export async function carriedBrowser(): Promise<LaunchOptions | null> {
  if (process.platform !== 'linux' || process.arch !== 'x64') return null;
  const carried = await importIfThere(() => import('@sparticuz/chromium'));
  if (carried === null) return null;
  const executablePath = await carried.default.executablePath();
  // A bare machine has no fonts; the package unpacks some beside its binary.
  if (!existsSync('/etc/fonts/fonts.conf')) process.env.FONTCONFIG_PATH ??= join(tmpdir(), 'fonts');
  return { executablePath, args: CARRIED_ARGUMENTS };
}

/** A package that a club need not have; null where it is not installed. */
async function importIfThere<T>(load: () => Promise<T>): Promise<T | null> {
  try {
    return await load();
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ERR_MODULE_NOT_FOUND') return null;
    throw error;
  }
}
