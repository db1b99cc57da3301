import { expect, test } from 'vitest';
import { messagesOf } from '../small-venue.ts';

const match = (day: string, more = '') => ({
  [`matches/${day}-cup.md`]: `---\nname: Cup\ndate: ${day}\nwaters: [mill-pond]\nentries: 3\n${more}---\n`,
});
const league = (fields: string) => ({ 'leagues/2026-season.md': `---\nname: Season\n${fields}---\n` });

test('accepts a season of matches', () => {
  expect(
    messagesOf({
      ...match('2026-05-02'),
      ...league('matches: [2026-05-02-cup]\nbest: 1\nmissed: 9\ncounts: match-places\n'),
    }),
  ).toEqual([]);
});

test('refuses a match that is not there, one twice, two ways to count, and more of the best than there are', () => {
  expect(
    messagesOf({
      ...match('2026-05-02'),
      ...match('2026-06-02', 'scoring: { points: high }\n'),
      ...league('matches: [2026-05-02-cup, 2026-06-02-cup, 2026-05-02-cup, 2026-05-03-cup]\nbest: 5\n'),
    }),
  ).toMatchInlineSnapshot(`
    [
      "leagues/2026-season.md:3:10 error Unexpected matches that count points low and high, expected one way in a league. Correct scoring in one of the matches. (league)",
      "leagues/2026-season.md:3:43 error Unexpected "2026-05-02-cup" again for matches[2], expected each match once. Take one out. (league)",
      "leagues/2026-season.md:3:59 error Unexpected "2026-05-03-cup" for matches[3], expected the name, without .md, of a file in matches/. Did you mean 2026-05-02-cup? (match-unknown)",
      "leagues/2026-season.md:4:7 error Unexpected 5 for best, expected at most 4, the matches there are. Correct it, or add the matches. (league)",
    ]
  `);
});

test('refuses a league without matches and a field it does not know', () => {
  expect(messagesOf(league('matches: []\nrounds: 3\n'))).toMatchInlineSnapshot(`
    [
      "leagues/2026-season.md:3:10 error Unexpected "[]" for matches, expected at least one match. Correct it. (field-value)",
      "leagues/2026-season.md:4:1 error Unexpected field "rounds", expected one of name, matches, best, missed, counts. Did you mean counts? (field-unknown)",
    ]
  `);
});
