import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { addDays } from '../../src/domain/day.ts';
import { runVenue } from './run-venue.ts';

const CONTENT = fileURLToPath(new URL('../../content', import.meta.url));

/**
 * Builds the demo guide of the day after, with one peg of it closed and a hazard notice for peg 3 of its water, into a
 * folder of its own.
 * @returns the folder, its day, and how to remove it
 */
export async function closedGuide(
  water: string,
  peg: string,
): Promise<{ readonly folder: string; readonly day: string; readonly remove: () => void }> {
  const temporary = mkdtempSync(join(tmpdir(), 'closed-guide-'));
  const content = join(temporary, 'content');
  const folder = join(temporary, 'guide');
  cpSync(CONTENT, content, { recursive: true });
  const venue = readFileSync(join(content, 'venue.md'), 'utf8');
  const guideDay = /^guide-day: (\S+)/m.exec(venue)?.[1] ?? '';
  const day = addDays(guideDay, 1);
  writeFileSync(join(content, 'venue.md'), venue.replace(/^guide-day: \S+/m, `guide-day: ${day}`));
  const record = join(content, 'pegs', water, `${peg}.md`);
  writeFileSync(
    record,
    readFileSync(record, 'utf8').replace(
      /^status: open$/m,
      `status: closed\nstatus-since: ${day}\nstatus-reason: the boards have gone`,
    ),
  );
  writeFileSync(
    join(content, 'notices', `${day}-loose-rail.md`),
    `---\ntitle: Loose handrail\nkind: hazard\nfrom: ${day}\npegs: [${water}/3]\n---\n\nDo not lean on it.\n`,
  );
  await runVenue(['build', '--venue', content, '--out', folder]);
  return { folder, day, remove: () => rmSync(temporary, { recursive: true, force: true }) };
}
