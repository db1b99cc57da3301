import { existsSync, readdirSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { availableParallelism, loadavg } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { openBrowser } from '../browser/chromium.ts';
import { PAGE_KINDS } from '../browser/page-kinds.ts';
import { compressingServer } from './pages/compressing-server.ts';
import { measurePage } from './pages/measure-page.ts';

/**
 * Measures the built guide as a visitor's phone meets it: `npm run build && npm run bench:pages`. One page of every kind
 * at 390 × 844 under 1.6 Mbit/s, 150 ms and a quarter of this machine's speed, from a server that compresses; then every
 * peg sheet without the brakes, for its size and where its answers end. `--kinds` leaves the sheets out.
 */
const DIST = fileURLToPath(new URL('../../dist', import.meta.url));
const BUDGET = {
  sheetBytes: 14_600,
  answersEnd: 844,
  largestPaintMilliseconds: 1200,
  scriptBytes: 12_000,
  layoutShift: 0,
};

if (!existsSync(join(DIST, 'index.html'))) {
  console.error('There is no guide in dist yet. Build it first: npm run build');
  process.exit(1);
}
const server = compressingServer(DIST);
await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
const root = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
const browser = await openBrowser();

const kinds = [];
for (const [kind, path] of Object.entries(PAGE_KINDS)) {
  const { pixelsTo, ...cost } = await measurePage(browser, root + path);
  kinds.push({
    page: kind,
    'largest paint, ms': cost.largestPaintMilliseconds,
    shift: cost.layoutShift,
    'html, bytes': cost.htmlBytes,
    'script, bytes': cost.scriptBytes,
    ...Object.fromEntries(Object.entries(pixelsTo).map(([name, pixels]) => [`to ${name}, px`, pixels ?? '–'])),
    'answers end, px': cost.answersEnd ?? '–',
  });
}
console.log(`Node ${process.version}, ${availableParallelism()} cores, load ${loadavg()[0]!.toFixed(1)}`);
console.table(kinds);
const moving = kinds.filter(({ shift }) => shift > BUDGET.layoutShift);
if (moving.length > 0) {
  console.log(`Something moves while it loads: ${moving.map(({ page }) => page).join(', ')}`);
  process.exitCode = 1;
}

if (!process.argv.includes('--kinds')) {
  const sheets: { sheet: string; 'html, bytes': number; 'answers end, px': number; wider: boolean }[] = [];
  for (const path of pegSheets()) {
    const { htmlBytes, answersEnd, wider } = await measurePage(browser, root + path, false);
    sheets.push({ sheet: path, 'html, bytes': htmlBytes, 'answers end, px': answersEnd ?? 0, wider });
  }
  const worst = (column: 'html, bytes' | 'answers end, px') => [...sheets].sort((a, b) => b[column] - a[column]);
  console.log(`${sheets.length} peg sheets; the largest, and those whose answers end lowest:`);
  console.table([...worst('html, bytes').slice(0, 6), ...worst('answers end, px').slice(0, 6)]);
  const over = sheets.filter(
    (sheet) => sheet['html, bytes'] > BUDGET.sheetBytes || sheet['answers end, px'] > BUDGET.answersEnd || sheet.wider,
  );
  console.log(over.length === 0 ? 'All within budget.' : `Over budget: ${over.map(({ sheet }) => sheet).join(', ')}`);
  if (over.length > 0) process.exitCode = 1;
}
await browser.close();
server.close();

/** A peg's folder stands in a water's, and a water's folder has a page of its own. */
function pegSheets(): readonly string[] {
  const folders = (path: string) =>
    readdirSync(join(DIST, path), { withFileTypes: true }).filter((e) => e.isDirectory());
  const known = new Set(Object.values(PAGE_KINDS).map((path) => path.split('/')[0]));
  known.delete(PAGE_KINDS.water?.split('/')[0]);
  return folders('.')
    .filter(({ name }) => !known.has(name) && existsSync(join(DIST, name, 'index.html')))
    .flatMap(({ name: water }) => folders(water).map(({ name }) => `${water}/${name}/`));
}
