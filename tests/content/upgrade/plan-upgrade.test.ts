import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { NEWEST_FORMAT } from '../../../src/content/folder-format.ts';
import { readVenue } from '../../../src/content/read-venue.ts';
import { planUpgrade } from '../../../src/content/upgrade/plan-upgrade.ts';
import { UPGRADE_STEPS } from '../../../src/content/upgrade/steps.ts';
import type { VenueFiles } from '../../../src/content/venue-files.ts';
import { standId } from '../../../src/domain/stand.ts';
import { replacing, smallVenue } from '../small-venue.ts';
import { changed, madeFolders, venueOf } from '../stands/made-folder.ts';

const upgrade = (files: VenueFiles) => changed(files, (_, staged) => planUpgrade(files, staged));

test('any folder of format 1 reads, once rewritten, to the venue it read to before', () => {
  fc.assert(
    fc.property(madeFolders, (files) => {
      const before = venueOf(files);
      const after = venueOf(upgrade(files).after);
      const pegs = after.pegs.map(({ id, ...peg }, i) => {
        expect(id).toBe(standId(before.pegs[i]!));
        return peg;
      });
      // Rows and records stand where they stood: no line of a log moved either.
      expect({ ...after, pegs }).toEqual(before);
    }),
    { numRuns: 40 },
  );
});

test('every line that was there is there still, in its order and to the byte', () => {
  fc.assert(
    fc.property(madeFolders, (files) => {
      const { after } = upgrade(files);
      expect([...after.texts.keys()]).toEqual([...files.texts.keys()]);
      for (const [path, text] of files.texts) {
        const now = after.texts.get(path)!.split('\n');
        const kept = now.filter((line) => !/^id: s-[0-9a-z]{8}\r?$/.test(line) && !/^format: /.test(line));
        expect(kept, path).toEqual(text.split('\n').filter((line) => !/^format: /.test(line)));
      }
    }),
    { numRuns: 20 },
  );
});

test('what is of the newest format already is left alone', () => {
  fc.assert(
    fc.property(madeFolders, (files) => {
      const once = upgrade(files).after;
      const twice = upgrade(once);
      expect(twice.plan).toEqual({ faults: [], changes: [] });
      expect(twice.after.texts).toEqual(once.texts);
    }),
    { numRuns: 20 },
  );
});

test('format stands first, below a comment that opens the record, and keeps its own comment', () => {
  const opened = smallVenue({ 'venue.md': replacing('name: Example', '# our venue\nname: Example') });
  expect(upgrade(opened).after.texts.get('venue.md')).toMatch(
    new RegExp(`^---\n# our venue\nformat: ${NEWEST_FORMAT}\nname: Example`),
  );
  const said = smallVenue({ 'venue.md': replacing('club: ', 'format: 1 # first\nclub: ') });
  expect(upgrade(said).after.texts.get('venue.md')).toContain(
    `name: Example Fishery\nformat: ${NEWEST_FORMAT} # first\nclub: `,
  );
});

test('there is a step to every format, one after the other', () => {
  expect(UPGRADE_STEPS.map(({ to }) => to)).toEqual(Array.from({ length: NEWEST_FORMAT - 1 }, (_, i) => i + 2));
});

test('a folder of a newer format is refused in words', () => {
  const newer = smallVenue({ 'venue.md': replacing('name: Example', 'format: 9\nname: Example') });
  expect(readVenue(newer).faults[0]).toMatchObject({ rule: 'format-newer', file: 'venue.md', line: 2 });
});
