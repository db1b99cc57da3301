import { join } from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { expect } from 'vitest';
import { openProfile } from '../browser/chromium.ts';

/** What one peg brings to the scales. */
export interface Bag {
  readonly peg: string;
  readonly status: 'weighed' | 'blank' | 'dnw' | 'absent' | 'disqualified';
  readonly nets: readonly {
    readonly part: string;
    readonly lb: number;
    readonly oz: number;
    readonly dr: number;
  }[];
}

type Net = Bag['nets'][number];

/** A phone with the page of a match day open: its browser can be killed as an empty battery kills it, and started again. */
export class ScalePhone {
  readonly #profile: string;
  readonly #address: string;
  readonly #clock: string;
  #context: BrowserContext | null = null;
  #page: Page | null = null;

  /** @param clock what its clock says: a moment with its zone */
  constructor(profile: string, address: string, clock: string) {
    this.#profile = profile;
    this.#address = address;
    this.#clock = clock;
  }

  get page(): Page {
    if (this.#page === null) throw new Error('This phone is off.');
    return this.#page;
  }

  async start(): Promise<void> {
    this.#context = await openProfile(this.#profile);
    await this.#context.clock.setSystemTime(this.#clock);
    this.#page = this.#context.pages()[0] ?? (await this.#context.newPage());
    await this.#page.goto(this.#address);
    await this.#page.waitForSelector('#day:not([hidden])');
  }

  /** Ends the browser at once, with nothing told to it. */
  async kill(): Promise<void> {
    const browser = this.#context?.browser();
    if (browser == null) throw new Error('This phone is off.');
    const session = await browser.newBrowserCDPSession();
    const { processInfo } = await session.send('SystemInfo.getProcessInfo');
    const ended = new Promise((resolve) => browser.once('disconnected', resolve));
    process.kill(processInfo.find(({ type }) => type === 'browser')!.id, 'SIGKILL');
    await ended;
    this.#context = null;
    this.#page = null;
  }

  async killAndStart(): Promise<void> {
    await this.kill();
    await this.start();
  }

  async close(): Promise<void> {
    await this.#context?.close();
  }

  /** Waits until the phone keeps every file of these pages. @param folder `matches/` */
  async keepsAll(folder: string): Promise<void> {
    const missing = () =>
      this.page.evaluate(async (below) => {
        const cache = await caches.open('peg-atlas / kept');
        const list = await (await cache.match('/.kept/whole'))?.json();
        if (list === undefined) return ['the guide'];
        const kept = new Set((await cache.keys()).map(({ url }) => new URL(url).pathname));
        return list.files
          .filter(([path]: string[]) => path!.startsWith(below))
          .filter(([, digest]: string[]) => !kept.has(`/.kept/file/${digest}`))
          .map(([path]: string[]) => path);
      }, folder);
    await expect.poll(missing, { timeout: 60_000 }).toEqual([]);
  }

  /** Notes kept, as the page tells; it tells them once they are on the disk. */
  notesKept(): Promise<number> {
    return this.page.$eval('#day-saved', (line) => Number(/^(\d+)/.exec(line.textContent ?? '')?.[1]));
  }

  /** Does what is noted, and waits until it is. */
  async noted(act: () => Promise<void>, notes = 1): Promise<void> {
    const before = await this.notesKept();
    await act();
    await expect.poll(() => this.notesKept(), { timeout: 20_000 }).toBe(before + notes);
  }

  async openPeg(peg: string): Promise<void> {
    const row = this.page.locator(`[data-peg="${peg}"]`);
    if ((await row.getAttribute('aria-expanded')) !== 'true') await row.click();
    await this.page.waitForSelector(`[data-peg="${peg}"][aria-expanded="true"]`);
  }

  /** Types a net and waits until the page says that it is kept. */
  async typeNet({ part, lb, oz, dr }: Net): Promise<void> {
    await this.page.click(`.net-part label:has([value="${part}"])`);
    for (const [unit, value] of Object.entries({ lb, oz, dr }))
      await this.page.fill(`.net-form [name="${unit}"]`, String(value));
    await expect
      .poll(() => this.page.textContent('.net-form .unsaved'), { timeout: 20_000 })
      .toBe(`${lb} lb ${oz} oz ${dr} dr typed, kept, not saved yet.`);
  }

  /** What stands in the fields of the open peg. */
  async typedNet(): Promise<Net> {
    const value = async (unit: string) => Number(await this.page.inputValue(`.net-form [name="${unit}"]`));
    const part = await this.page.$eval('.net-part :checked', (radio) => (radio as HTMLInputElement).value);
    return { part, lb: await value('lb'), oz: await value('oz'), dr: await value('dr') };
  }

  /** Saves what is typed; a weight that the page asks about is meant. */
  async saveNet(): Promise<void> {
    const before = await this.notesKept();
    await this.page.click('.net-form [type="submit"]');
    const isAsked = async () => ((await this.page.textContent('.net-form .why')) ?? '').includes('press once more');
    await expect
      .poll(async () => (await this.notesKept()) > before || (await isAsked()), { timeout: 20_000 })
      .toBe(true);
    if ((await this.notesKept()) > before) return;
    await this.page.click('.net-form [type="submit"]');
    await expect.poll(() => this.notesKept(), { timeout: 20_000 }).toBe(before + 1);
  }

  async weigh({ peg, status, nets }: Bag): Promise<void> {
    await this.openPeg(peg);
    if (status !== 'weighed') return this.noted(() => this.page.click(`[data-status="${status}"]`));
    for (const net of nets) {
      await this.typeNet(net);
      await this.saveNet();
    }
  }

  /** Saves the file that this phone hands over. */
  async handOver(folder: string, words: string): Promise<string> {
    const [download] = await Promise.all([
      this.page.waitForEvent('download'),
      this.page.getByRole('button', { name: words }).click(),
    ]);
    const path = join(folder, download.suggestedFilename());
    await download.saveAs(path);
    return path;
  }

  /** Takes another phone's file, and gives what the page said of it. */
  async take(path: string): Promise<string> {
    // The line for a slip that is held before the camera stands in the same part of the page, and speaks of itself.
    const said = this.page.locator('#day-hand-over [role="status"]:not(#slip-read)');
    await said.evaluate((line) => {
      line.textContent = '';
    });
    await this.page.setInputFiles('#day-hand-over input[type="file"]', path);
    await expect.poll(() => said.textContent(), { timeout: 20_000 }).not.toBe('');
    return (await said.textContent()) ?? '';
  }

  /** The table of results: place, peg, weight, section and its place, points. */
  results(): Promise<string[][]> {
    return this.page.$$eval('#day-results .results tbody tr', (rows) =>
      rows.map((row) =>
        [...row.children].filter((cell) => !cell.classList.contains('name')).map((cell) => cell.textContent ?? ''),
      ),
    );
  }
}
