import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { openBrowser, PHONE } from './chromium.ts';
import { PAGE_KINDS } from './page-kinds.ts';

/** Every kind of page, and what one shows only once something was chosen on it. */
const STATES = Object.entries({ ...PAGE_KINDS, 'drawn peg, opened': 'draw/kiln-pool/?peg=23' });

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

/** A page on a screen so wide, with the browser's own letters of this size: 16 px is what browsers come with. */
async function opened(path: string, width: number, letterPixels = 16): Promise<Page> {
  const context = await browser.newContext({ viewport: { ...PHONE, width }, serviceWorkers: 'block' });
  const page = await context.newPage();
  const session = await context.newCDPSession(page);
  await session.send('Page.setFontSizes', { fontSizes: { standard: letterPixels, fixed: (letterPixels * 13) / 16 } });
  await page.goto(inject('siteUrl') + path, { waitUntil: 'networkidle' });
  // The match day is filled by its script.
  await page.waitForFunction(() => document.querySelector<HTMLElement>('#day')?.hidden !== true);
  return page;
}

// WCAG 2.2, 1.4.10 Reflow (320 px) and 1.4.4 Resize Text (200%).
describe.each([
  ['320 px wide', 320, 16],
  ['390 px wide with letters of twice the size', 390, 32],
  ['320 px wide with letters of twice the size', 320, 32],
] as const)('%s', (_, width, letters) => {
  it.each(STATES)('%s does not move sideways', async (_kind, path) => {
    const page = await opened(path, width, letters);
    const { wide, size } = await page.evaluate(() => ({
      wide: document.documentElement.scrollWidth,
      size: Number.parseFloat(getComputedStyle(document.documentElement).fontSize),
    }));
    expect(size).toBeGreaterThanOrEqual(letters);
    expect(wide).toBeLessThanOrEqual(width);
    await page.context().close();
  });
});

// A reader of large letters meets whole words where it matters: hazards by name, the heads of the figures.
describe.each([390, 320])('a sheet %d px wide with letters of twice the size', (width) => {
  it('cuts no word of a hazard or of a head in two', async () => {
    const page = await opened('kiln-pool/23/', width, 32);
    const cut = await page.evaluate(() =>
      [...document.querySelectorAll('.dangers h3, .expect :is(th, .month-choice), .expect td.middle')].flatMap(
        (each) => {
          if (!each.checkVisibility()) return [];
          const texts = document.createTreeWalker(each, NodeFilter.SHOW_TEXT);
          const found: string[] = [];
          for (let text = texts.nextNode(); text !== null; text = texts.nextNode()) {
            for (const { 0: word, index } of (text.textContent ?? '').matchAll(/[A-Za-z]+/g)) {
              const range = document.createRange();
              range.setStart(text, index);
              range.setEnd(text, index + word.length);
              if (range.getClientRects().length > 1) found.push(word);
            }
          }
          return found;
        },
      ),
    );
    expect(cut).toEqual([]);
    await page.context().close();
  });
});

// WCAG 2.2, 2.5.8 Target Size (24 px) for tables; 44 px elsewhere, as 2.5.5 asks. Links in running text are exempt there.
describe('on a phone', () => {
  it.each(STATES)('%s has targets that a thumb finds', async (_kind, path) => {
    const page = await opened(path, PHONE.width);
    const small = await page.evaluate(() => {
      const targets = [...document.querySelectorAll<HTMLElement>('a[href], button, input, select, summary, textarea')];
      return targets.flatMap((target) => {
        if (!target.checkVisibility() || target.closest('svg, .skip') !== null) return [];
        if (target instanceof HTMLAnchorElement && getComputedStyle(target).display === 'inline') return [];
        const boxes = [target, target.closest('label')].flatMap((each) => each?.getBoundingClientRect() ?? []);
        const [width, height] = [
          Math.max(...boxes.map((box) => box.width)),
          Math.max(...boxes.map((box) => box.height)),
        ];
        const least = target.closest('table') === null ? 44 : 24;
        const isLarge = Math.min(width, height) >= least - 0.5;
        return isLarge ? [] : [`${target.tagName} "${target.textContent.trim()}": ${width} × ${height}`];
      });
    });
    expect(small).toEqual([]);
    await page.context().close();
  });
});

// CSS Color Adjustment 1, forced colours: shadows go, backgrounds are the system's; borders, outlines and underlines stay.
describe('in forced colours', () => {
  it.each(STATES)('%s keeps its buttons and what is chosen', async (_kind, path) => {
    const page = await opened(path, PHONE.width);
    await page.emulateMedia({ forcedColors: 'active' });
    const lost = await page.evaluate(() => {
      const lineOf = (element: Element) => {
        const style = getComputedStyle(element);
        const sides = ['top', 'right', 'bottom', 'left'].map((side) =>
          style.getPropertyValue(`border-${side}-style`) === 'none'
            ? '0px'
            : style.getPropertyValue(`border-${side}-width`),
        );
        const outline = style.outlineStyle === 'none' ? '0px' : style.outlineWidth;
        // Neither weight, which one cannot tell by itself, nor the ground, which the system fills in.
        return { sides, outline, line: style.textDecorationLine };
      };
      const shown = (selector: string) =>
        [...document.querySelectorAll(selector)].filter((each) => each.checkVisibility());
      const buttons = shown('button').filter((button) => {
        const { sides, outline, line } = lineOf(button);
        return [...sides, outline].every((width) => width === '0px') && line === 'none';
      });
      // What is chosen looks other than one of its kind beside it that is not.
      const isChosen =
        '[aria-current]:not([aria-current="false"]), [aria-pressed="true"], tr.now > *, :is(td, th).now:not(.of-month)';
      const chosen = shown(isChosen).filter((each) => {
        const others = [...(each.parentElement?.parentElement ?? document).querySelectorAll(each.tagName)];
        const other = others.find((one) => one !== each && one.checkVisibility() && !one.matches(isChosen));
        return other !== undefined && JSON.stringify(lineOf(each)) === JSON.stringify(lineOf(other));
      });
      return [...buttons, ...chosen].map(
        (each) => `${each.tagName}.${each.className} "${each.textContent?.trim().slice(0, 40)}"`,
      );
    });
    expect(lost).toEqual([]);
    await page.context().close();
  });
});
