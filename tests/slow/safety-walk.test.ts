import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type PegFacts, pegVerdict } from '../../src/domain/peg-verdict.ts';
import { childEnvironment } from '../child-environment.ts';
import { roundFile } from '../commands/intake/venue-on-disk.ts';
import { type FileChange, messagesOf } from '../content/small-venue.ts';
import {
  DAY_AFTER,
  RECORDED_LINE,
  setGuideDay,
  venueWithoutLines,
  WALKED_DAY,
  walkedPeg,
  walkedRound,
  walkedVenue,
} from './walked-venue.ts';

// Each thing that was once seen to mislead, walked from the file or the tap to the words of what is built. What the
// built guide must say is the project's own promise; no figure here has a source outside it.

const PROJECT = fileURLToPath(new URL('../..', import.meta.url));
// Inside the project, where the built pages' modules find their packages.
const BUILT = join(PROJECT, 'node_modules/.cache/peg-atlas/safety-walk');
type Guide = 'on the day' | 'the day after' | 'no mapped line';
const FOLDER: Record<Guide, string> = {
  'on the day': join(BUILT, 'day'),
  'the day after': join(BUILT, 'after'),
  'no mapped line': join(BUILT, 'unmapped'),
};

const folders: string[] = [];

function command(args: readonly string[], folder: string): void {
  const { status, stdout, stderr } = spawnSync(process.execPath, ['src/commands/venue.ts', ...args], {
    cwd: PROJECT,
    env: childEnvironment({ VENUE_DIR: folder }),
    encoding: 'utf8',
  });
  if (status !== 0) throw new Error(`${args.join(' ')} ended with ${status}: ${stdout}${stderr}`);
}

beforeAll(() => {
  const venue = walkedVenue();
  folders.push(venue);
  command(['intake', roundFile(venue, walkedRound(venue)), '--yes'], venue);
  command(['build', '--out', FOLDER['on the day']], venue);
  setGuideDay(venue, DAY_AFTER);
  command(['build', '--out', FOLDER['the day after']], venue);
  const unmapped = venueWithoutLines();
  folders.push(unmapped);
  command(['build', '--out', FOLDER['no mapped line']], unmapped);
});
afterAll(() => {
  for (const folder of [BUILT, ...folders.map((path) => dirname(path))])
    rmSync(folder, { recursive: true, force: true });
});

const built = (guide: Guide, place: string) => readFileSync(join(FOLDER[guide], place), 'utf8');

/** What a person reads of a page, or a feed reader of a feed: no styles, no tags, one space between words. */
function wordsOf(guide: Guide, place: string): string {
  return built(guide, place)
    .replace(/<(style|script)\b[\s\S]*?<\/\1>/g, '')
    .replace(/<(title|desc)[^>]*>/g, ' ')
    .replace(/<[^>]+>/g, ' ')
    .replace(/&lt;[^&]*&gt;/g, ' ')
    .replace(/\s+/g, ' ')
    .replaceAll('&#39;', "'");
}

const sheet = (peg: string) => `mill-pond/${peg}/index.html`;
const HOME = 'index.html';
const WATER = 'mill-pond/index.html';
const REGISTER = 'register/index.html';
const CLOSURE = 'Stocking from the first platform';
const BOTH: readonly Guide[] = ['on the day', 'the day after'];
const DAY: readonly Guide[] = ['on the day'];
const AFTER: readonly Guide[] = ['the day after'];
const UNMAPPED: readonly Guide[] = ['no mapped line'];

interface Step {
  readonly point: number;
  readonly place: string;
  readonly on: readonly Guide[];
  readonly says: readonly string[];
  readonly never?: readonly string[];
}

const STEPS: readonly Step[] = [
  // 1: the bailiff's words about a line stand, and no sheet calls a peg clear.
  {
    point: 1,
    place: sheet('3'),
    on: BOTH,
    says: ['Not in the draw, not to be fished.', 'new wires straight over the platform', 'do not fish here'],
    never: ['This peg is clear of it'],
  },
  { point: 1, place: HOME, on: BOTH, says: ['overhead line, new wires straight over the platform'] },
  { point: 1, place: WATER, on: BOTH, says: ['overhead line, new wires straight over the platform'] },
  { point: 1, place: REGISTER, on: BOTH, says: ['new wires straight over the platform', 'hard rule'] },
  { point: 1, place: 'data/hazards.csv', on: BOTH, says: ['new wires straight over the platform'] },
  { point: 1, place: 'due/round-sheet/mill-pond/index.html', on: BOTH, says: ['new wires straight over the platform'] },
  // 2: without a mapped line the measured 8 m closes and is shown.
  {
    point: 2,
    place: sheet('8'),
    on: UNMAPPED,
    says: ['Not in the draw', 'measured 8 m on 12 Nov 2026 (tape)', 'No line is on the club’s map'],
  },
  { point: 2, place: HOME, on: UNMAPPED, says: ['Wires over the path; overhead line inside the stand-off'] },
  {
    point: 2,
    place: WATER,
    on: UNMAPPED,
    says: ['No line is on the club’s map', 'overhead line inside the stand-off'],
  },
  { point: 2, place: sheet('8'), on: BOTH, says: ['Not in the draw', 'measured 8 m on 12 Nov 2026 (tape)'] },
  // 3: an unsafe platform from a round.
  {
    point: 3,
    place: sheet('5'),
    on: BOTH,
    says: ['Closed since 21 Nov 2026', 'Unsafe platform', 'unsafe: a post is gone'],
  },
  { point: 3, place: HOME, on: BOTH, says: ['the platform must not be used (unsafe: a post is gone)'] },
  { point: 3, place: WATER, on: BOTH, says: ['the platform must not be used (unsafe: a post is gone)'] },
  { point: 3, place: REGISTER, on: BOTH, says: ['Platforms not to be used', 'Mill Pond 5 : unsafe: a post is gone'] },
  {
    point: 3,
    place: 'data/hazards.csv',
    on: BOTH,
    says: ['Unsafe platform', 'unsafe: a post is gone', 'closed,2026-11-2', 'the platform must not be used'],
  },
  { point: 3, place: 'due/index.html', on: BOTH, says: ['the platform must not be used (unsafe: a post is gone)'] },
  { point: 3, place: 'due/checks.ics', on: BOTH, says: ['The peg is closed since 21 Nov 2026'] },
  // 4: a closure of one day.
  { point: 4, place: sheet('1'), on: DAY, says: ['Closed until 21 Nov 2026', CLOSURE] },
  { point: 4, place: sheet('1'), on: AFTER, says: ['Safety at this peg'], never: ['Closed until', 'Not in the draw'] },
  { point: 4, place: HOME, on: DAY, says: [`until 21 Nov 2026: ${CLOSURE}`, '5 closed'] },
  { point: 4, place: HOME, on: AFTER, says: ['4 closed'], never: [CLOSURE] },
  { point: 4, place: WATER, on: DAY, says: [`until 21 Nov 2026: ${CLOSURE}`] },
  { point: 4, place: WATER, on: AFTER, says: ['Pegs'], never: [`until 21 Nov 2026: ${CLOSURE}`] },
  { point: 4, place: 'notices/feed.xml', on: BOTH, says: [`Closure: ${CLOSURE}`, 'Mill Pond peg 1, on 21 Nov 2026'] },
  // 5: the nearest gate is locked and takes no ambulance.
  {
    point: 5,
    place: sheet('5'),
    on: BOTH,
    says: ['Gate for an ambulance Road gate', 'never locked', 'Example Fishery: Mill Pond, peg 5', 'W'],
  },
  // 6: what was found at no peg.
  { point: 6, place: HOME, on: BOTH, says: ['Mill Pond, Drove gate: a new chain', 'six dead bream'] },
  { point: 6, place: sheet('10'), on: BOTH, says: ['Fish dead or in distress: six dead bream'] },
  { point: 6, place: WATER, on: BOTH, says: ['something was found here', 'six dead bream'] },
  { point: 6, place: 'data/venue.geojson', on: BOTH, says: ['Drove gate: Gate locked, a new chain'] },
  { point: 6, place: 'due/round-sheet/mill-pond/index.html', on: BOTH, says: ['a new chain', 'six dead bream'] },
  { point: 6, place: REGISTER, on: BOTH, says: ['Mill Pond, Drove gate', 'a new chain', 'six dead bream'] },
  { point: 6, place: 'notices/feed.xml', on: BOTH, says: ['Gate locked, Mill Pond, Drove gate: a new chain'] },
  { point: 6, place: 'due/checks.ics', on: BOTH, says: ['BEGIN:VALARM'] },
  // 7: scum closes; a cleared hard rule keeps who decided and why; scum is looked at daily.
  {
    point: 7,
    place: sheet('6'),
    on: BOTH,
    says: ['Closed since 12 Nov 2026', 'Blue-green algae scum, along the edge', 'next check 13 Nov 2026'],
  },
  { point: 7, place: HOME, on: BOTH, says: ['since 12 Nov 2026: Blue-green algae scum, along the edge'] },
  { point: 7, place: sheet('7'), on: BOTH, says: ['Safety at this peg'], never: ['Not in the draw', 'in the bay'] },
  { point: 7, place: REGISTER, on: BOTH, says: ['by Bailiff, round w3lkab, No scum for seven days'] },
  // 8: no record is no silence.
  {
    point: 8,
    place: sheet('4'),
    on: BOTH,
    says: ['Safety at this peg', 'Overhead lines surveyed 3 Mar 2026 by role: Bailiff', 'Look up all the same'],
  },
  {
    point: 8,
    place: sheet('4'),
    on: UNMAPPED,
    says: ['The club has not said when anyone looked for overhead lines here', 'Look up before you set up'],
  },
  { point: 8, place: 'due/index.html', on: BOTH, says: ['Overhead lines: is the map still right?'] },
  // 9: texts.
  {
    point: 9,
    place: sheet('5'),
    on: BOTH,
    says: ['Do not use it and keep others off it: ask for a redraw.'],
    never: ['Test it before you put your weight on it'],
  },
  {
    point: 9,
    place: 'safety/index.html',
    on: BOTH,
    says: ['Safety'],
    never: ['Never break ice from a platform alone', 'A wooden pole may carry', 'is clear of it'],
  },
  // 10 is walked with two tabs, double taps, clocks and fixes in tests/browser/bank-round-tabs.test.ts. A build shows this much.
  { point: 10, place: 'bank-round/index.html', on: BOTH, says: ['Bank round'] },
  // 11: the table of simulated histories is tests/slow/cut-coverage.test.ts. A build shows what is assumed, and no closed peg.
  {
    point: 11,
    place: 'due/index.html',
    on: BOTH,
    says: ['It is assumed that', 'Pegs that are closed or inside a stand-off are not listed'],
  },
  {
    point: 11,
    place: 'due/clearance/mill-pond/index.html',
    on: BOTH,
    says: ['Closed: no cut is estimated here.', 'ask the network operator before any work'],
  },
];

describe.each(STEPS.flatMap((step) => step.on.map((guide) => ({ ...step, guide }))))(
  'point $point, $guide, $place',
  ({ guide, place, says, never = [] }) => {
    it('says what is known, and nothing that misleads', () => {
      expect(existsSync(join(FOLDER[guide], place))).toBe(true);
      const words = wordsOf(guide, place);
      for (const wanted of says) expect(words).toContain(wanted);
      for (const unwanted of never) expect(words).not.toContain(unwanted);
    });
  },
);

const OPEN_UNDER_LINE = walkedPeg('3', -0.0508, `status: open\n${RECORDED_LINE}`);
const OPEN_AT_8_METRES = walkedPeg(
  '8',
  -0.0501,
  'status: open\nmeasured-line-distance: { distance: 8 m, measured-on: 2026-11-12, method: tape }',
);
const NO_MAPPED_LINE: FileChange = (text) => text.replace(/^.*"overhead-line".*\n/m, '');

/** What never gets as far as a page: the file's own fault, told with what was found. */
const REFUSED: readonly { point: number; changes: Record<string, FileChange>; says: RegExp }[] = [
  { point: 1, changes: { 'pegs/mill-pond/3.md': OPEN_UNDER_LINE }, says: /3\.md.* error .*new wires straight over/ },
  {
    point: 2,
    changes: { 'pegs/mill-pond/8.md': OPEN_AT_8_METRES, 'waters/mill-pond.geojson': NO_MAPPED_LINE },
    says: /8\.md.* error .*stand-off/,
  },
  {
    point: 2,
    changes: { 'pegs/mill-pond/3.md': OPEN_UNDER_LINE, 'waters/mill-pond.geojson': NO_MAPPED_LINE },
    says: /3\.md.* error /,
  },
  {
    point: 12,
    changes: {
      'pegs/mill-pond/4.md': walkedPeg('4', -0.0507, 'status: open\nplatform: { kind: timber, width: 1,5 m }'),
    },
    says: /4\.md.* error .*1,5 m.*1\.5 m/,
  },
  {
    point: 12,
    changes: { 'pegs/mill-pond/4.md': walkedPeg('4', -0.0507, 'status: open\nlimits: { pole: 9,5 m }') },
    says: /4\.md.* error .*9,5 m.*9\.5 m/,
  },
];

describe('what is refused before a page is built', () => {
  it.each(REFUSED)('point $point: $says', ({ changes, says }) => {
    expect(messagesOf(changes).filter((message) => says.test(message))).not.toEqual([]);
  });
});

describe('point 4 on a phone: the guide of the day, read on the day after', () => {
  const factsOf = (guide: Guide, name: string) => {
    const { pegs } = JSON.parse(built(guide, 'data/pegs.json')) as {
      readonly pegs: readonly { peg: string; status: string; facts: PegFacts }[];
    };
    const peg = pegs.find((row) => row.peg === name);
    if (peg === undefined) throw new Error(`pegs.json holds no peg ${name}`);
    return peg;
  };

  it('opens the peg again from the facts the guide carries, and the data file says the same of its own day', () => {
    const { status, facts } = factsOf('on the day', '1');
    expect(status).toBe('closed');
    expect(pegVerdict(facts, WALKED_DAY)).toMatchObject({ state: 'closed', until: WALKED_DAY });
    expect(pegVerdict(facts, DAY_AFTER).state).toBe('open');
    expect(factsOf('the day after', '1').status).toBe('open');
  });

  it.each(['3', '5', '6', '8'])('keeps peg %s closed on both days', (name) => {
    const { facts } = factsOf('on the day', name);
    for (const day of [WALKED_DAY, DAY_AFTER]) expect(pegVerdict(facts, day).state).toBe('closed');
  });

  it('moves the notice to what is past', () => {
    const groupOf = (guide: Guide) =>
      /data-notice-group="(\w+)"(?:(?!data-notice-group)[\s\S])*Stocking from the first platform/.exec(
        built(guide, 'notices/index.html'),
      )?.[1];
    expect(groupOf('on the day')).toBe('live');
    expect(groupOf('the day after')).toBe('past');
  });
});
