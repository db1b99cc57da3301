import { describe, expect, test } from 'vitest';
import { formatFault } from '../../src/content/format-fault.ts';
import { withChanges } from '../../src/content/intake/faults-after.ts';
import { folderFiles } from '../../src/content/intake/folder-files.ts';
import { StagedFiles } from '../../src/content/intake/staged-files.ts';
import { readContent } from '../../src/content/read-content.ts';
import { readVenue } from '../../src/content/read-venue.ts';
import { planRepeg } from '../../src/content/stands/plan-repeg.ts';
import { planRetire } from '../../src/content/stands/plan-retire.ts';
import type { VenueFiles } from '../../src/content/venue-files.ts';
import { standId } from '../../src/domain/stand.ts';
import { FILE, type FileChange, faultsOf, replacing, smallCheckedVenue, smallVenue } from './small-venue.ts';

/**
 * What goes wrong in silence where a folder describes today and its log is years deep, each as a club meets it: the change is
 * made as `format.md` and the commands say, and the log still says what it said. What the ratings make of it is held in
 * tests/ratings/venue-that-changed.test.ts and the simulations.
 */
const NO_LATER_RECORDS: Readonly<Record<string, FileChange>> = {
  'rounds/2026-11-12-k7q2.csv': null,
  'notices/2026-11-02-boards-off.md': null,
};

function venueOf(files: VenueFiles) {
  const { venue, faults } = readVenue(files);
  if (venue === null) throw new Error(faults.map(formatFault).join('\n'));
  return venue;
}

/** Bags by the stand they were caught at. */
function bags(files: VenueFiles): Readonly<Record<string, number | undefined>> {
  const { pegs, retired = [], sessions } = venueOf(files);
  const ids = new Map([...pegs, ...retired].map((peg) => [peg.peg, standId(peg)]));
  return Object.fromEntries(sessions.map(({ peg, weightGrams }) => [ids.get(peg)!, weightGrams]));
}

const NEW_PEG_2 = `---
peg: "2"
since: 2026-06-01
water: mill-pond
position: { lat: 52.74999, lng: -0.0507 }
facing: 0
status: open
---
`;

test('a new peg 2, so that 2 and 10 become 3 and 11: each number keeps the log of its own stand', () => {
  const before = smallVenue(NO_LATER_RECORDS);
  const staged = new StagedFiles(folderFiles('/nowhere', before));
  const range = { first: 2, last: 10 };
  planRepeg(readContent(before).value, { water: 'mill-pond', range, shift: 1, from: '2026-06-01' }, staged);
  staged.put('pegs/mill-pond/2.md', NEW_PEG_2);
  const after = withChanges(before, staged.changed());
  expect(venueOf(after).pegs.map(({ peg }) => peg)).toEqual(['1', '2', '3', '11']);
  expect(bags(after)).toEqual(bags(before));
  expect(venueOf(after).sessions.map(({ peg }) => peg)).not.toContain('2');
});

test('lilies cut half-way through the log: the record of today has none, the days before have them', () => {
  const { pegs } = smallCheckedVenue({
    [FILE.peg]: replacing('features: [corner]', 'features: [corner, { id: reeds, until: 2026-04-30 }]'),
  });
  expect(pegs[0]?.features).toEqual(['corner']);
  expect(pegs[0]?.datedFeatures).toContainEqual({ id: 'reeds', until: '2026-04-30' });
});

test('a new bag part: rows from before it was weighed apart say nothing of it, and one that does is told', () => {
  const since = { [FILE.venue]: replacing('species: [common carp]', 'species: [common carp], since: 2026-09-01') };
  const [fault] = faultsOf(since).filter(({ rule }) => rule === 'part-before-since');
  expect(formatFault(fault!)).toContain('sessions/2026/sessions.csv:2');
  expect(formatFault(fault!)).toContain('2026-09-01');
});

test('stocking has its day and is read for the water', () => {
  const { waters } = smallCheckedVenue({
    [FILE.water]: replacing('close-season: none', 'stocked: [{ on: 2026-03-01, what: F1s }]\nclose-season: none'),
  });
  expect(waters[0]?.stocked).toEqual([{ on: '2026-03-01', what: 'F1s' }]);
});

test('a peg is moved ten metres: what was plumbed from it before stays where it was plumbed', () => {
  const { soundings } = smallCheckedVenue({
    [FILE.peg]: replacing(
      'facing: 0',
      'facing: 0\nmoved: [{ on: 2026-05-01, metres: 10, was-at: { lat: 52.74999, lng: -0.0508 } }]',
    ),
  });
  expect(soundings[1]).toMatchObject({ depthMetres: expect.closeTo(1.3716, 4) });
  expect(soundings[1]?.at?.lng).toBeCloseTo(-0.0508, 6);
});

test('a peg is filled in: its record may leave the guide, and its sessions stay', () => {
  const before = smallVenue(NO_LATER_RECORDS);
  const staged = new StagedFiles(folderFiles('/nowhere', before));
  planRetire(
    readContent(before).value,
    { water: 'mill-pond', peg: '10', from: '2026-06-01', why: 'Filled in' },
    staged,
  );
  const after = withChanges(before, staged.changed());
  expect(venueOf(after).pegs.map(({ peg }) => peg)).toEqual(['1', '2']);
  expect(venueOf(after).sessions).toHaveLength(3);
  expect(bags(after)).toEqual(bags(before));
});

test('a nought on a sheet is what the club says it is, for the venue or for one event', () => {
  const meaning = (changes: Readonly<Record<string, FileChange>>) => {
    const { settings, events } = smallCheckedVenue(changes);
    return [settings.ratingRules.blankMeans, events[0]?.blankMeans];
  };
  const nothing = replacing('stand-off:', 'ratings: { blank-means: nothing }\nstand-off:');
  expect(meaning({})).toEqual([undefined, undefined]);
  expect(meaning({ [FILE.venue]: nothing })).toEqual(['nothing', undefined]);
  const column = (text: string) =>
    text.replace(/wind_speed\n/, 'wind_speed,blank_means\n').replace(/,3\n$/, ',3,dnw\n');
  expect(meaning({ [FILE.venue]: nothing, [FILE.events]: column })).toEqual(['nothing', 'dnw']);
});

test('a match logged on a peg that was closed that day is told with both places', () => {
  const [fault] = faultsOf({
    [FILE.peg]: replacing('status: open', 'status: closed\nstatus-reason: Boards\nstatus-since: 2026-05-01'),
  }).filter(({ rule }) => rule === 'fished-while-closed');
  const words = formatFault(fault!);
  expect(words).toContain('sessions/2026/sessions.csv:2');
  expect(words).toContain('pegs/mill-pond/1.md');
});

describe('bad input', () => {
  const HEAD = 'water: mill-pond';
  const inPeg = (line: string): Readonly<Record<string, FileChange>> => ({
    [FILE.peg]: replacing(HEAD, `${line}\n${HEAD}`),
  });

  test.each([
    [
      'two pegs that swapped numbers on days that do not meet',
      {
        ...inPeg('was: [{ peg: "2", until: 2026-05-31 }]'),
        'pegs/mill-pond/2.md': replacing(HEAD, `was: [{ peg: "1", until: 2026-06-30 }]\n${HEAD}`),
      },
      'number-overlap',
      'pegs/mill-pond/1.md',
    ],
    ['numbers that overlap', inPeg('was: [{ peg: "2", until: 2026-05-31 }]'), 'number-overlap', 'pegs/mill-pond/1.md'],
    [
      'a number that a retired stand had on the same days',
      {
        ...inPeg('was: [{ peg: "7", until: 2026-05-31 }]'),
        'pegs/mill-pond/s-old.md':
          '---\nid: s-old\nwas: [{ peg: "7", until: 2026-05-31 }]\nretired: { from: 2026-06-01 }\nwater: mill-pond\nposition: { lat: 52.74999, lng: -0.0503 }\nfacing: 0\nstatus: open\n---\n',
      },
      'number-overlap',
      'pegs/mill-pond/1.md',
    ],
    [
      'two stands with one id',
      { ...inPeg('id: s-one'), 'pegs/mill-pond/2.md': replacing(HEAD, `id: s-one\n${HEAD}`) },
      'stand-id-duplicate',
      'pegs/mill-pond/1.md',
    ],
    [
      'an until before its from',
      inPeg('was: [{ peg: "7", from: 2026-02-01, until: 2026-01-01 }]'),
      'day-order',
      '2026-02-01',
    ],
    ['a was of another water', inPeg('was: [{ peg: "7", water: other, until: 2026-01-01 }]'), 'was-water', 'mill-pond'],
    [
      'a format that is not known',
      { [FILE.venue]: replacing('name: Example', 'format: two\nname: Example') },
      'format-unknown',
      'format 1 to 2',
    ],
    [
      'a feature dated after its peg was retired',
      {
        'pegs/mill-pond/s-old.md':
          '---\nid: s-old\nwas: [{ peg: "7", until: 2026-05-31 }]\nretired: { from: 2026-06-01 }\nwater: mill-pond\nposition: { lat: 52.74999, lng: -0.0503 }\nfacing: 0\nfeatures: [{ id: reeds, from: 2026-07-01 }]\nstatus: open\n---\n',
      },
      'after-retirement',
      'line 4',
    ],
  ] as const)('%s is a fault that names both places and how to mend it', (_, changes, rule, other) => {
    const faults = faultsOf(changes).filter((fault) => fault.rule === rule);
    expect(faults.length).toBeGreaterThan(0);
    const words = faults.map(formatFault).join('\n');
    expect(words).toContain(other);
    for (const { file, line, mend } of faults) {
      expect(file).toMatch(/^(pegs\/mill-pond\/|venue\.md)/);
      expect(line).toBeGreaterThan(1);
      expect(mend).not.toBe('');
    }
  });

  test('a swap of two numbers on one day is no cycle and no fault', () => {
    const swapped = {
      ...NO_LATER_RECORDS,
      ...inPeg('was: [{ peg: "2", until: 2026-05-31 }]'),
      'pegs/mill-pond/2.md': replacing(HEAD, `was: [{ peg: "1", until: 2026-05-31 }]\n${HEAD}`),
    };
    expect(faultsOf(swapped)).toEqual([]);
    expect(
      smallCheckedVenue(swapped)
        .sessions.map(({ peg, painted }) => [painted ?? peg, peg])
        .slice(0, 2),
    ).toEqual([
      ['1', '2'],
      ['2', '1'],
    ]);
  });
});
