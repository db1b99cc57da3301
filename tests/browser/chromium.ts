import { existsSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import {
  type Browser,
  type BrowserContext,
  type BrowserContextOptions,
  chromium,
  type LaunchOptions,
} from 'playwright-core';
import { carriedBrowser } from '../../src/commands/print/open-browser.ts';

/** Phone and desk, the two sizes every page is looked at in. */
export const PHONE = { width: 390, height: 844 };
export const DESK = { width: 1280, height: 800 };

/** The package's own list switches web security off, which would hide the faults these tests look for; hence ours. */
const ARGUMENTS = [
  '--headless=shell',
  '--no-sandbox',
  '--no-zygote',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--font-render-hinting=none',
  '--use-gl=angle',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
];

/**
 * Opens Chromium: the one named by `CHROMIUM`, else the one carried as a package (Linux on x64), else an installed Chrome.
 * @throws where none of the three is there
 */
export async function openBrowser(): Promise<Browser> {
  const browser = await chromium.launch(await whichChromium());
  const newContext = browser.newContext.bind(browser);
  return Object.assign(browser, {
    newContext: async (options?: BrowserContextOptions) => patient(await newContext(options)),
  });
}

/** Waits as long as a test may take: the library's own half a minute is over sooner where others load the machine. */
function patient(context: BrowserContext): BrowserContext {
  context.setDefaultTimeout(110_000);
  return context;
}

/** Opens Chromium with what it keeps in a folder of its own, so that it can be killed and opened again. */
export async function openProfile(folder: string): Promise<BrowserContext> {
  const options = { ...(await whichChromium()), viewport: PHONE, acceptDownloads: true };
  return patient(await chromium.launchPersistentContext(folder, options));
}

async function whichChromium(): Promise<LaunchOptions> {
  const named = process.env.CHROMIUM;
  if (named !== undefined && existsSync(named)) return { executablePath: named, args: ARGUMENTS };
  const carried = await carriedBrowser();
  if (carried === null) return { channel: 'chrome', args: ARGUMENTS };
  // The letters that come with it, and no others: where a line ends must not hang on what a machine has installed.
  return { ...carried, env: { ...process.env, FONTCONFIG_FILE: join(tmpdir(), 'fonts/fonts.conf') }, args: ARGUMENTS };
}
