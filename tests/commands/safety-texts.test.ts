import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';
import { run } from '../../src/commands/safety-texts.ts';
import { FILE, replacing, smallVenue } from '../content/small-venue.ts';
import { recordedIo } from './recorded-io.ts';

async function inFolder(changes: Parameters<typeof smallVenue>[0], check: (folder: string) => Promise<void>) {
  const folder = await mkdtemp(join(tmpdir(), 'venue-'));
  try {
    for (const [path, text] of smallVenue(changes).texts) {
      await mkdir(dirname(join(folder, path)), { recursive: true });
      await writeFile(join(folder, path), text);
    }
    await check(folder);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

test('prints every text with its source behind it, and how many have none', () =>
  inFolder({}, async (folder) => {
    const io = recordedIo();
    expect(await run(['--venue', folder], io)).toBe(0);
    const all = io.printed.join('\n');
    expect(all).toContain(
      'first steps: Someone is in the water\n  Call 999, or make someone call. Do not go in.\n    [London',
    );
    expect(io.printed.at(-1)).toMatch(/^\n\d+ texts: \d+ with a source, \d+ common practice without one\.$/);
    const json = recordedIo();
    expect(await run(['--venue', folder, '--json'], json)).toBe(0);
    const rows: unknown = JSON.parse(json.printed.join('\n'));
    expect(rows).toBeInstanceOf(Array);
  }));

test('shows the faults of a folder it cannot read', () =>
  inFolder({ [FILE.peg]: replacing('facing: 0', 'facing: deep') }, async (folder) => {
    const io = recordedIo();
    expect(await run(['--venue', folder], io)).toBe(1);
    expect(io.errors.join('\n')).toContain('(bearing)');
  }));
