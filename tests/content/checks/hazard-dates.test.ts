import { expect, test } from 'vitest';
import { FILE, messagesOf, replacing } from '../small-venue.ts';

test('accepts a hazard checked after it was found by a round that exists', () => {
  expect(
    messagesOf({ [FILE.peg]: replacing('found-on: 2026-03-01', 'found-on: 2026-03-01\n    round: k7q2') }),
  ).toEqual([]);
});

test('accepts a check on the very day of the finding', () => {
  expect(messagesOf({ [FILE.peg]: replacing('checked-on: 2026-11-01', 'checked-on: 2026-03-01') })).toEqual([]);
});

test('holds a hazard of a water to the same order of days', () => {
  const hazards = (checked: string) =>
    `kind: clay pit\nhazards:\n  - { kind: trip, place: the path, severity: 2, likelihood: 2, found-on: 2026-03-01, ${checked} }`;
  const rulesOf = (checked: string) =>
    messagesOf({ [FILE.water]: replacing('kind: clay pit', hazards(checked)) }).map((words) => words.split(' ').at(-1));
  expect(rulesOf('checked-on: 2026-03-01')).toEqual([]);
  expect(rulesOf('checked-on: 2026-02-28')).toEqual(['(hazard-days)']);
  expect(rulesOf('cleared-on: 2026-02-28')).toEqual(['(hazard-days)']);
});

test('refuses a check before the finding, and a round that is not there', () => {
  expect(
    messagesOf({
      [FILE.peg]: replacing(
        'found-on: 2026-03-01\n    checked-on: 2026-11-01',
        'found-on: 2026-03-01\n    checked-on: 2026-02-01\n    round: k7q3',
      ),
    }),
  ).toMatchInlineSnapshot(`
    [
      "pegs/mill-pond/1.md:14:17 error Unexpected "2026-02-01" for hazards[0].checked-on, expected no day before 2026-03-01, when the hazard was found. Correct one of the two days. (hazard-days)",
      "pegs/mill-pond/1.md:15:12 error Unexpected "k7q3" for hazards[0].round, expected the reference of a file in rounds/. Did you mean k7q2? (round-unknown)",
    ]
  `);
});
