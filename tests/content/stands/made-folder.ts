import * as fc from 'fast-check';
import type { Content } from '../../../src/content/content.ts';
import { withChanges } from '../../../src/content/intake/faults-after.ts';
import { folderFiles } from '../../../src/content/intake/folder-files.ts';
import { StagedFiles } from '../../../src/content/intake/staged-files.ts';
import { readContent } from '../../../src/content/read-content.ts';
import { readVenue } from '../../../src/content/read-venue.ts';
import type { StandPlan } from '../../../src/content/stands/stand-change.ts';
import type { VenueFiles } from '../../../src/content/venue-files.ts';
import type { Venue } from '../../../src/domain/venue.ts';
import { smallVenue } from '../small-venue.ts';

const HABITS = ['plain', 'comments', 'quoted', 'carriage returns', 'flow lists'] as const;

/** A record as one of several writers would keep it. */
function record(number: number, habit: (typeof HABITS)[number]): string {
  const lng = (-0.0509 + 0.0001 * number).toFixed(4);
  const lines = [
    '---',
    ...(habit === 'comments' ? ['# kept by the secretary'] : []),
    habit === 'quoted' ? `peg: '${number}'` : `peg: ${number}${habit === 'comments' ? ' # as painted' : ''}`,
    'water: mill-pond',
    `position: { lat: 52.74999, lng: ${lng} }`,
    'facing: 0',
    habit === 'flow lists' ? 'features: [ corner , reeds ]' : 'features:\n  - corner',
    'status: open',
    '',
    '---',
    '',
    'Reeds to the left.',
    '',
  ];
  return lines.join(habit === 'carriage returns' ? '\r\n' : '\n');
}

/** The day every folder's log is of. */
const LOG_DAY = '2026-05-02';

/** Folders of one water, of up to nine pegs numbered from 1 with gaps, each with a session on every peg that knows its place by its weight. */
export const madeFolders: fc.Arbitrary<VenueFiles> = fc
  .record({
    numbers: fc.uniqueArray(fc.integer({ min: 1, max: 10 }), { minLength: 2, maxLength: 9 }),
    habits: fc.array(fc.constantFrom(...HABITS), { minLength: 11, maxLength: 11 }),
    format: fc.constantFrom('', 'format: 1\n', 'format: 1 # as we began\n'),
  })
  .map(({ numbers, habits, format }) => {
    const sorted = [...numbers].sort((a, b) => a - b);
    const rows = sorted.map((number) => `${LOG_DAY}-mill-pond,${number},a-${number}xx,weighed,${number} lb`);
    const away = Object.fromEntries(['1', '2', '10'].map((peg) => [`pegs/mill-pond/${peg}.md`, null]));
    return smallVenue({
      ...away,
      ...Object.fromEntries(sorted.map((number) => [`pegs/mill-pond/${number}.md`, record(number, habits[number]!)])),
      'venue.md': (text) => text.replace('name: Example', `${format}name: Example`),
      'sessions/2026/sessions.csv': `event,peg,angler,status,weight\n${rows.join('\n')}\n`,
      'sessions/2026/events.csv': (text) => text.replace(',1,3,14.5', `,1,${sorted.length},14.5`),
      'soundings/mill-pond.csv': `peg,distance,bearing,depth,date,level\n${sorted[0]},6,,1.4 m,2026-04-01,\n`,
      'rounds/2026-11-12-k7q2.csv': null,
      'notices/2026-11-02-boards-off.md': null,
    });
  });

/** The folder after a change that was worked out, with what stood in its way. */
export function changed(
  files: VenueFiles,
  plan: (content: Content, staged: StagedFiles) => StandPlan,
): { readonly after: VenueFiles; readonly plan: StandPlan } {
  const staged = new StagedFiles(folderFiles('/nowhere', files));
  const made = plan(readContent(files).value, staged);
  return { plan: made, after: made.faults.length > 0 ? files : withChanges(files, staged.changed()) };
}

/** The venue of a folder that must have no faults. */
export function venueOf(files: VenueFiles): Venue {
  const { venue, faults } = readVenue(files);
  const errors = faults.filter(({ severity }) => severity === 'error');
  if (venue === null || errors.length > 0) throw new Error(`Faults: ${JSON.stringify(errors, null, 2)}`);
  return venue;
}
