import { expect, test } from 'vitest';
import { messagesOf } from '../small-venue.ts';

const match = (fields: string) => ({
  'matches/2026-12-06-pairs.md': `---\nname: Pairs\ndate: 2026-12-06\nwaters: [mill-pond]\nentries: 2\n${fields}---\n`,
});
const PLANNED = 'pegs:\n  A: [mill-pond/1, mill-pond/10]\n';

test('accepts a match before it is planned and after', () => {
  expect(messagesOf(match(''))).toEqual([]);
  expect(
    messagesOf(
      match(
        `sections: 1\napart: 20 m\nends: { rule: one-a-section, features: [corner], gap: 40 m }\ndraw: 08:30\nall-in: "10:00"\nall-out: "15:00"\n${PLANNED}`,
      ),
    ),
  ).toEqual([]);
});

test('refuses a file whose name is no day, or another day than its date', () => {
  const text = Object.values(match(''))[0]!;
  expect(messagesOf({ 'matches/pairs.md': text, 'matches/2026-12-07-pairs.md': text })).toMatchInlineSnapshot(`
    [
      "matches/2026-12-07-pairs.md:3:7 error Unexpected 2026-12-06 for date, expected 2026-12-07, as the file is named. Correct the date, or rename the file. (match-day)",
      "matches/pairs.md:1:1 error Unexpected file name pairs, expected a day and a few words, such as 2026-12-06-winter-three.md. Rename the file: the day, then small letters, digits and hyphens. (match-name)",
    ]
  `);
});

test('refuses pegs, waters and features that are not there, a peg twice and pegs left out', () => {
  expect(
    messagesOf(
      match(
        'sections: 1\nends: { rule: left-out, features: [cornr] }\nleave-out: [mill-pond/1]\npegs:\n  A: [mill-pond/1, mill-pond/11]\n  B: [mill-pond/1]\nkept: [mill-pond/2]\n',
      ),
    ),
  ).toMatchInlineSnapshot(`
    [
      "matches/2026-12-06-pairs.md:7:36 error Unexpected "cornr" for ends.features[0], expected one of corner, reeds. Did you mean corner? (feature-unknown)",
      "matches/2026-12-06-pairs.md:10:3 error Unexpected 3 pegs, expected 2, one for each of the entries. Add or take out pegs, or correct entries. A peg too many stands empty in somebody’s section. (match-entries)",
      "matches/2026-12-06-pairs.md:10:3 error Unexpected 2 sections, expected 1, as sections says. Correct one of the two. (match-sections)",
      "matches/2026-12-06-pairs.md:10:7 error Unexpected "mill-pond/1" for pegs.A[0], expected no peg that leave-out names. Take it out of one of the two. (match-left-out)",
      "matches/2026-12-06-pairs.md:10:20 error Unexpected "mill-pond/11" for pegs.A[1], expected a peg of the venue, as water/peg. Did you mean mill-pond/1? (peg-unknown)",
      "matches/2026-12-06-pairs.md:11:7 error Unexpected "mill-pond/1" again for pegs.B[0], expected each peg once; it is in line 10 already. Take one out. (match-peg-twice)",
      "matches/2026-12-06-pairs.md:11:7 error Unexpected "mill-pond/1" for pegs.B[0], expected no peg that leave-out names. Take it out of one of the two. (match-left-out)",
      "matches/2026-12-06-pairs.md:12:8 error Unexpected "mill-pond/2" for kept[0], expected a peg of the plan. Add it to a section, or take it out here. (match-kept)",
    ]
  `);
});

test('warns of a plan whose pegs are closed on the day of the match, so that the closing can be published, and lets one pass that opens before', () => {
  const closure = (until: string) => ({
    'notices/2026-11-20-works.md': `---\ntitle: Tree work\nkind: closure\nfrom: 2026-11-20\nuntil: ${until}\npegs: [mill-pond/10]\n---\n`,
  });
  expect(messagesOf({ ...match(PLANNED), ...closure('2026-12-06') })).toMatchInlineSnapshot(`
    [
      "matches/2026-12-06-pairs.md:7:20 warning Unexpected peg "mill-pond/10", closed on 2026-12-06 (until 6 Dec 2026: Tree work), expected no closed peg in a match. It is left out of the draw; put another in its place: npm run -s venue -- plan 2026-12-06-pairs --mend (match-peg-closed)",
    ]
  `);
  expect(messagesOf({ ...match(PLANNED), ...closure('2026-12-05') })).toEqual([]);
  expect(messagesOf({ ...match(`${PLANNED}status: fished\n`), ...closure('2026-12-06') })).toEqual([]);
});

test('refuses a section of one, more places than entries, and a kept peg that has steps', () => {
  expect(
    messagesOf(match(`sections: 2\nplaces: 3\nstep-free: 3\n${PLANNED}kept: [mill-pond/1]\n`)),
  ).toMatchInlineSnapshot(`
    [
      "matches/2026-12-06-pairs.md:6:11 error Unexpected 2 sections for 2 entries, expected at least two anglers in every section: nobody wins a section alone. Write at most 1. (match-sections)",
      "matches/2026-12-06-pairs.md:7:9 error Unexpected 3 places for 2 entries, expected no more places than entries. Correct one of the two. (match-places)",
      "matches/2026-12-06-pairs.md:8:12 error Unexpected 3 of 2 entries, expected no more than there are entries. Correct one of the two. (match-step-free)",
      "matches/2026-12-06-pairs.md:10:3 error Unexpected 1 sections, expected 2, as sections says. Correct one of the two. (match-sections)",
      "matches/2026-12-06-pairs.md:11:8 error Unexpected "mill-pond/1", whose record does not say that it is free of steps for kept[0], expected a peg with access: { step-free: true }. Keep another peg, or correct the record of this one. (match-kept)",
    ]
  `);
});

test('warns of a peg in two matches of one day', () => {
  const two = match(PLANNED);
  const [[path, text] = ['', '']] = Object.entries(two) as [string, string][];
  const messages = messagesOf({ ...two, [path.replace('pairs', 'singles')]: text });
  expect(messages).toHaveLength(2);
  expect(messages[0]).toMatch(
    /^matches\/2026-12-06-singles\.md:7:\d+ warning Unexpected peg "mill-pond\/\d+", which .* has on the same day, expected a peg for one match of a day\./,
  );
});
