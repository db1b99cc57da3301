import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { childEnvironment } from '../child-environment.ts';

const PROJECT = fileURLToPath(new URL('../..', import.meta.url));

function venueCommand(args: readonly string[], environment: Record<string, string> = {}) {
  return spawnSync(process.execPath, ['src/commands/venue.ts', ...args], {
    cwd: PROJECT,
    env: childEnvironment(environment),
    encoding: 'utf8',
  });
}

describe('a closed peg under a line, set to open', () => {
  let folder: string;
  let out: string;
  let record: string;

  beforeAll(() => {
    const scratch = mkdtempSync(join(tmpdir(), 'venue-'));
    folder = join(scratch, 'venue');
    out = join(scratch, 'guide');
    cpSync(join(PROJECT, 'content'), folder, { recursive: true });
    mkdirSync(out);
    writeFileSync(join(out, 'index.html'), 'the good guide');
    writeFileSync(join(out, 'offline-list.json'), '[]');
    record = openClosedPeg(folder);
  });
  afterAll(() => rmSync(join(folder, '..'), { recursive: true }));

  it('stops the build, which names the peg, the line and the distances, and shows no stack trace', () => {
    const { status, stderr, stdout } = venueCommand(['build', '--out', out], { VENUE_DIR: folder });
    expect(status).toBe(1);
    const said = stdout + stderr;
    expect(said).toContain(record);
    expect(said).toMatch(/30 m/);
    expect(said).toMatch(/overhead line/i);
    expect(said).not.toMatch(/^\s+at .*\.ts:\d+/m);
  });

  it('leaves the guide built before as it was', () => {
    expect(readFileSync(join(out, 'index.html'), 'utf8')).toBe('the good guide');
    expect(readdirSync(join(out, '..')).sort()).toEqual(['guide', 'venue']);
  });

  it('is a fault of check, as data too', () => {
    const { status, stdout } = venueCommand(['check', '--json', '--venue', folder]);
    expect(status).toBe(1);
    const report = JSON.parse(stdout) as { ok: boolean; faults: { file: string; line: number; severity: string }[] };
    expect(report.ok).toBe(false);
    expect(report.faults.filter(({ severity }) => severity === 'error').map(({ file }) => file)).toEqual([record]);
  });
});

describe('the venue command', () => {
  it('answers wrong usage with exit code 2 and what it knows', () => {
    expect(venueCommand(['bild']).status).toBe(2);
    expect(venueCommand(['bild']).stderr).toContain('Unexpected command "bild"');
    expect(venueCommand(['check', '--jsn']).status).toBe(2);
    expect(venueCommand(['serve', '--port', 'harbour']).stderr).toContain('Unexpected port "harbour"');
    expect(venueCommand([]).status).toBe(2);
    expect(venueCommand(['--help']).status).toBe(0);
    expect(venueCommand(['check', '--help'])).toMatchObject({ status: 0, stdout: expect.stringContaining('Usage:') });
  });

  it('runs on the Node the project carries', () => {
    expect(Number(process.version.slice(1).split('.')[0])).toBeGreaterThanOrEqual(24);
  });
});

/** Opens the first peg that is closed because of the overhead line; returns its record's path inside the folder. */
function openClosedPeg(folder: string): string {
  const records = readdirSync(join(folder, 'pegs'), { recursive: true, encoding: 'utf8' }).filter((name) =>
    name.endsWith('.md'),
  );
  for (const name of records.sort()) {
    const path = join(folder, 'pegs', name);
    const text = readFileSync(path, 'utf8');
    if (!text.includes('status: closed') || !text.includes('kind: overhead-line')) continue;
    writeFileSync(path, text.replace('status: closed', 'status: open'));
    return `pegs/${name}`;
  }
  throw new Error('the demo venue has no peg closed because of an overhead line');
}
