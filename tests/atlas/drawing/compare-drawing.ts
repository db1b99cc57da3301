import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect } from 'vitest';

/** Lets a browser show a committed drawing in the site's own ink. */
const STYLE = ['almanac', 'drawings']
  .map((name) => `<?xml-stylesheet type="text/css" href="../../../../src/styles/${name}.css"?>\n`)
  .join('');

/**
 * Compares a drawing with the committed one of that name. Where they differ, the new one is written beside it as
 * `*.actual.svg` for review. A drawing without a committed one is written, save under CI, where it fails.
 */
export function compareDrawing(name: string, svg: string): void {
  const folder = fileURLToPath(new URL('./fixtures/', import.meta.url));
  const committed = `${folder}${name}.svg`;
  const actual = `${folder}${name}.actual.svg`;
  const drawn = `${STYLE}${svg.replace('<svg ', '<svg xmlns="http://www.w3.org/2000/svg" ').replaceAll('><', '>\n<')}\n`;
  if (!existsSync(committed)) {
    expect(process.env.CI, `there is no committed drawing ${name}.svg to compare with`).toBeUndefined();
    mkdirSync(folder, { recursive: true });
    writeFileSync(committed, drawn);
    return;
  }
  const same = readFileSync(committed, 'utf8') === drawn;
  if (same) rmSync(actual, { force: true });
  else writeFileSync(actual, drawn);
  expect(same, `the drawing differs: compare fixtures/${name}.actual.svg with fixtures/${name}.svg`).toBe(true);
}

/** Every element opened is closed again in order, and no number in it is broken. */
export function expectWellFormed(svg: string): void {
  expect(svg).not.toMatch(/NaN|Infinity|undefined|null|\sstyle=/);
  const open: string[] = [];
  for (const [, closing, name, rest] of svg.matchAll(/<(\/?)([a-z]+)([^>]*)>/gi)) {
    if (closing === '/') expect(open.pop()).toBe(name);
    else if (!rest!.endsWith('/')) open.push(name!);
  }
  expect(open).toEqual([]);
}
