import { spawn, spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openBrowser, PHONE } from './chromium.ts';
import { installPackage } from './installed-package.ts';

/** A club's papers, all invented: a phone's points, a sheet, a finder's log, and what they do not say. */
const PLACES = JSON.stringify({
  type: 'FeatureCollection',
  features: [
    thing('Alder Pool', 'Polygon', [
      [
        [-1.5, 52.5],
        [-1.4985, 52.5],
        [-1.4985, 52.5006],
        [-1.5, 52.5006],
        [-1.5, 52.5],
      ],
    ]),
    ...[1, 2, 3, 4, 5, 6].map((peg) => thing(`Peg ${peg}`, 'Point', [-1.5 + peg * 0.0002, 52.49999])),
    thing('Car park', 'Point', [-1.5003, 52.4998]),
  ],
});
const SHEET = [
  'Alder Pool open 15 November 2026;;;',
  'Pos;Peg;Name;Weight',
  '1;2;Ash Reedling;23-08',
  '2;5;Bob Sallow;14-02',
  '3;1;Cy Withy;9-15',
  '4;6;Di Osier;4-00',
  '5;3;Ed Alderson;DNW',
].join('\n');
const RULES = [
  'CLUB RULES',
  '1. Barbless hooks only.',
  '2. No keepnets:',
  '   (a) from June to August;',
  '   (b) for carp at any time.',
].join('\r\n');
const DEPTHS = 'lat,lon,depth (m),date\n52.5001,-1.4998,1.20,2026-11-10\n52.5002,-1.4994,1.80,2026-11-10\n';
const ANSWERS = {
  all: {
    name: 'Alder Pools',
    club: 'Alder Vale Angling Society',
    waters: 'Alder Pool',
    'pegs of Alder Pool': '6',
    lengths: 'm',
    weights: 'lb',
    parts: 'none',
    'overhead lines': 'not-looked',
    hours: '5',
    listing: 'full',
    places: '2',
    'mark DNW': 'dnw',
    'level 2026-11-10': 'unknown',
  },
};

let folder: string;
let command: string;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'club-'));
  command = installPackage(folder);
  for (const [name, text] of Object.entries({
    'places.geojson': PLACES,
    'sheet.csv': SHEET,
    'depths.csv': DEPTHS,
    'rules.txt': RULES,
    'answers.yaml': JSON.stringify(ANSWERS),
  })) {
    writeFileSync(join(folder, name), text);
  }
}, 300_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function thing(name: string, type: string, coordinates: unknown) {
  return { type: 'Feature', properties: { name }, geometry: { type, coordinates } };
}

function filesBelow(place: string): readonly string[] {
  return readdirSync(place, { recursive: true, encoding: 'utf8' })
    .map((path) => join(place, path))
    .filter((path) => statSync(path).isFile());
}

/** Runs the package's command in the club's folder, as an empty machine would: no variable of this project is set. */
function venue(...args: string[]) {
  const { PATH, HOME } = process.env;
  return spawnSync(process.execPath, [command, ...args], {
    cwd: folder,
    env: { PATH, HOME },
    encoding: 'utf8',
  });
}

/** The same, where it must go well. */
function done(...args: string[]): string {
  const { status, stdout, stderr } = venue(...args);
  expect([args.join(' '), status, stderr, stdout]).toEqual([args.join(' '), 0, expect.any(String), expect.any(String)]);
  return `${stdout}${stderr}`;
}

test('from the tarball alone: start, papers, check, build, and a sheet read in the browser', async () => {
  expect(done('version')).toMatch(/^Peg Atlas \d/);
  expect(existsSync(join(folder, 'node_modules', 'typescript'))).toBe(false);
  const answers = ['--answers', 'answers.yaml'];
  done('start', '--repo', '--day', '2026-11-16', ...answers);
  const papers = [...answers, '--keys', 'keys', '--yes'];
  done('import', 'places', 'places.geojson', ...papers);
  done('import', 'results', 'sheet.csv', ...papers);
  done('import', 'soundings', 'depths.csv', ...papers);
  done('import', 'rules', 'rules.txt', ...papers);
  const settings = join(folder, 'content', 'venue.md');
  writeFileSync(settings, readFileSync(settings, 'utf8').replace(/^invented: true.*\n/m, ''));
  expect(done('check')).toContain('is clean: 1 water, 6 pegs, 1 event, 5 sessions, 2 soundings.');
  expect(done('build', '--address', '/guide/')).toContain('Built the guide of Alder Pools');

  for (const place of ['content', 'dist', '.cache', 'keys']) {
    const written = filesBelow(join(folder, place)).map((path) => readFileSync(path, 'utf8'));
    expect([place, written.length > 0]).toEqual([place, true]);
    for (const name of ['Reedling', 'Sallow', 'Cy Withy', 'Di Osier', 'Alderson']) {
      expect([place, name, written.some((text) => text.includes(name))]).toEqual([place, name, false]);
    }
  }

  const server = spawn(process.execPath, [command, 'serve', '--port', '45671'], {
    cwd: folder,
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const browser = await openBrowser();
  try {
    const address = await new Promise<string>((resolve) => {
      server.stdout.on('data', (chunk: Buffer) => {
        const found = /http:\S+/.exec(chunk.toString())?.[0];
        if (found !== undefined) resolve(found);
      });
    });
    expect(address).toMatch(/\/guide\/$/);
    const page = await browser.newPage({ viewport: PHONE });
    const problems: string[] = [];
    page.on('pageerror', (error) => problems.push(error.message));
    page.on('requestfailed', (request) => {
      // What a page still asked for as it was left is no fault.
      if (request.failure()?.errorText !== 'net::ERR_ABORTED') problems.push(request.url());
    });
    await page.goto(`${address}alder-pool/2/`);
    expect(await page.locator('h1').innerText()).toContain('2');
    expect(await page.locator('main').innerText()).toContain('not plumbed');
    await page.goto(`${address}rules/`);
    expect(await page.locator('main').innerText()).toContain('for carp at any time');
    expect((await page.goto(`${address}no/such/page/`))?.status()).toBe(404);
    expect(await page.locator('h1').innerText()).toBe('No such page');
    // It is of the edition that is published, whatever the address it is shown at.
    await page.locator('[data-edition]', { hasText: 'checked' }).waitFor();
    expect(await page.locator('[data-standing-kind]').count()).toBe(0);
    await page.locator('main a').click();
    expect(new URL(page.url()).pathname).toBe('/guide/');
    expect(problems).toEqual([]);
  } finally {
    server.kill();
    await browser.close();
  }
}, 300_000);

test('what is installed takes under 200 MB', () => {
  const BLOCK_BYTES = 512;
  const files = filesBelow(join(folder, 'node_modules')).map((path) => statSync(path));
  const bytes = files.reduce((sum, { size }) => sum + size, 0);
  const onDisk = files.reduce((sum, { blocks }) => sum + blocks * BLOCK_BYTES, 0);
  console.log(
    `installed: ${Math.round(bytes / 1e6)} MB in ${files.length} files, ${Math.round(onDisk / 1e6)} MB of disk`,
  );
  expect(bytes).toBeLessThan(200e6);
});

test('a guide is put wherever the caller says, from wherever the caller stands', () => {
  for (const out of ['guide', 'node_modules-guide', join(tmpdir(), `${folder.split('/').at(-1)}-beside`)]) {
    // Spoken, silent but for faults, and as one document.
    const said = { guide: [], 'node_modules-guide': ['--quiet'] }[out] ?? ['--json'];
    const told = done('build', '--out', out, ...said);
    if (said.length === 0) expect(told).toContain('Built the guide');
    else if (said[0] === '--quiet') expect(told.replaceAll(/^.* warning .*$|^\d+ warnings?\.$/gm, '').trim()).toBe('');
    else expect(JSON.parse(told)).toMatchObject({ ok: true, leftOut: [] });
    const place = join(out.startsWith('/') ? '' : folder, out);
    expect(readdirSync(place)).toEqual(
      expect.arrayContaining(['.nojekyll', '_headers', '404.html', 'third-party-notices.txt']),
    );
    rmSync(place, { recursive: true });
  }
  expect(readdirSync(folder).filter((name) => name.startsWith('.'))).toEqual([
    '.build',
    '.cache',
    '.gitignore',
    '.vscode',
  ]);
}, 300_000);

test('several venues in one folder are checked and built together from the package alone', () => {
  const own = venue('start', join('waters', 'birch'), '--example', '--day', '2026-11-16');
  expect([own.status, own.stderr]).toEqual([0, '']);
  cpSync(join(folder, 'content'), join(folder, 'waters', 'alder'), { recursive: true });
  // One level too high is answered once, with what to write.
  const tooHigh = venue('check', '--venue', 'waters');
  expect([tooHigh.status, tooHigh.stderr.match(/ error /g)?.length]).toEqual([1, 1]);
  expect(tooHigh.stderr).toContain('write association.md here');
  writeFileSync(join(folder, 'waters', 'association.md'), '---\nname: Example Vale Association\n---\n\nTwo waters.\n');
  expect(done('check', '--venue', 'waters')).toContain('waters/alder is clean');
  done('build', '--venue', 'waters', '--out', 'guides', '--address', '/guides/');
  const index = readFileSync(join(folder, 'guides', 'index.html'), 'utf8');
  for (const id of ['alder', 'birch']) {
    expect(index).toContain(`<a href="/guides/${id}/">`);
    expect(existsSync(join(folder, 'guides', id, 'index.html'))).toBe(true);
  }
}, 300_000);
