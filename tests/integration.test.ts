import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { handedOver } from '../src/atlas/handed-over.ts';
import { pegAtlas } from '../src/integration.ts';
import { childEnvironment } from './child-environment.ts';

const PROJECT = fileURLToPath(new URL('..', import.meta.url));
let scratch: string;
let folder: string;

beforeAll(() => {
  scratch = mkdtempSync(join(tmpdir(), 'integration-'));
  folder = join(scratch, 'venue');
  cpSync(join(PROJECT, 'content'), folder, { recursive: true });
  const file = join(folder, 'venue.md');
  writeFileSync(file, readFileSync(file, 'utf8').replace(/^---\n/, '---\naddress: https://club.example/guide/\n'));
});
afterAll(() => {
  vi.unstubAllEnvs();
  rmSync(scratch, { recursive: true });
});

/** Astro's side of the first hook. */
async function setUp(command: 'build' | 'sync') {
  const said: string[] = [];
  const settings: { site?: string; base?: string }[] = [];
  const logger = { error: (line: string) => said.push(line), warn: (line: string) => said.push(line) };
  const hook = pegAtlas({ folder }).hooks['astro:config:setup']!;
  await hook({ command, logger, updateConfig: (given: object) => settings.push(given) } as never);
  return { said, settings: settings[0]! };
}

describe('a guide as an extension of Astro', () => {
  test('takes site and base from the folder, and reads it once however many ask', async () => {
    vi.stubEnv('VENUE_DIR', '');
    const { settings } = await setUp('build');
    expect(settings).toMatchObject({ site: 'https://club.example', base: '/guide/' });
    const read = handedOver(folder)!.read;
    expect(read.venue!.pegs.length).toBeGreaterThan(0);
    // A record that is edited behind the check is not what is built.
    const file = join(folder, 'venue.md');
    writeFileSync(file, readFileSync(file, 'utf8').replace('club.example/guide/', 'club.example/other/'));
    expect((await setUp('build')).settings).toMatchObject({ base: '/guide/' });
    expect(handedOver(folder)!.read).toBe(read);
  });

  test('needs no whole folder for what builds nothing', async () => {
    expect((await setUp('sync')).said).toEqual([]);
  });

  test("stops Astro's own build at a fault before anything is written, with its sentence and no stack", () => {
    const file = join(folder, 'venue.md');
    writeFileSync(file, readFileSync(file, 'utf8').replace('\nclub:', '\nclubb:'));
    const out = join(scratch, 'guide');
    const { status, stdout, stderr } = spawnSync('npx', ['astro', 'build', '--outDir', pathToFileURL(out).href], {
      cwd: PROJECT,
      env: childEnvironment({ VENUE_DIR: folder, ASTRO_TELEMETRY_DISABLED: '1' }),
      encoding: 'utf8',
    });
    const said = stdout + stderr;
    expect(status).toBe(1);
    expect(said).toContain('Unexpected field "clubb"');
    expect(said).not.toMatch(/^\s+at .*:\d+/m);
    expect(existsSync(out)).toBe(false);
  });
});
