import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { formatFault } from '../../../src/content/format-fault.ts';
import { planRepeg, type Repegging } from '../../../src/content/stands/plan-repeg.ts';
import { planRetire } from '../../../src/content/stands/plan-retire.ts';
import type { VenueFiles } from '../../../src/content/venue-files.ts';
import { standId } from '../../../src/domain/stand.ts';
import { replacing, smallVenue } from '../small-venue.ts';
import { changed, madeFolders, venueOf } from './made-folder.ts';

const DAY = '2026-06-01';
const shifts = fc.constantFrom(-3, -2, -1, 1, 2, 3);

const repeg = (files: VenueFiles, change: Partial<Repegging> = {}) =>
  changed(files, (content, staged) =>
    planRepeg(content, { water: 'mill-pond', range: { first: 1, last: 99 }, shift: 1, from: DAY, ...change }, staged),
  );
const messages = (files: VenueFiles, change: Partial<Repegging> = {}) =>
  repeg(files, change).plan.faults.map(formatFault);

/** Which bag was caught at which stand: what no re-pegging may change. */
function bagsByStand(files: VenueFiles): ReadonlyMap<string, number | undefined> {
  const { pegs, retired = [], sessions } = venueOf(files);
  const ids = new Map([...pegs, ...retired].map((peg) => [peg.peg, standId(peg)]));
  return new Map(sessions.map(({ peg, weightGrams }) => [ids.get(peg)!, weightGrams]));
}

test('whatever run goes up or down, every stand keeps its place, its id and its log, and only its number changes', () => {
  fc.assert(
    fc.property(
      madeFolders,
      fc.integer({ min: 1, max: 10 }),
      fc.integer({ min: 1, max: 10 }),
      shifts,
      (files, a, b, shift) => {
        const range = { first: Math.min(a, b), last: Math.max(a, b) };
        const before = venueOf(files);
        const numbers = before.pegs.map(({ peg }) => Number(peg));
        const moves = (number: number) => number >= range.first && number <= range.last;
        const wanted = numbers.map((number) => (moves(number) ? number + shift : number));
        const isPossible = numbers.some(moves) && new Set(wanted).size === wanted.length && Math.min(...wanted) >= 1;
        const { plan, after } = repeg(files, { range, shift });
        expect(plan.faults.length === 0).toBe(isPossible);
        if (!isPossible) return;
        const venue = venueOf(after);
        const placeOf = new Map(venue.pegs.map((peg) => [standId(peg), peg]));
        before.pegs.forEach((peg, i) => {
          expect(placeOf.get(standId(peg))).toMatchObject({ at: peg.at, peg: String(wanted[i]) });
        });
        expect(bagsByStand(after)).toEqual(bagsByStand(files));
        const { pegs: _, sessions: __, soundings: ___, ...rest } = venue;
        expect(rest).toMatchObject({ settings: before.settings, events: before.events });
        expect(venue.soundings.map(({ depthMetres }) => depthMetres)).toEqual(
          before.soundings.map(({ depthMetres }) => depthMetres),
        );
      },
    ),
    { numRuns: 60 },
  );
});

test('a run that goes up and down again has its numbers of before, and the log of every day is where it was', () => {
  fc.assert(
    fc.property(madeFolders, (files) => {
      const there = repeg(files).after;
      const back = repeg(there, { range: { first: 2, last: 99 }, shift: -1, from: '2026-07-01' });
      expect(back.plan.faults).toEqual([]);
      expect(venueOf(back.after).pegs.map(({ peg, at }) => [peg, at])).toEqual(
        venueOf(files).pegs.map(({ peg, at }) => [peg, at]),
      );
      expect(bagsByStand(back.after)).toEqual(bagsByStand(files));
    }),
    { numRuns: 20 },
  );
});

test('a record keeps every line but those of its number: comments, order, quotes and line ends', () => {
  fc.assert(
    fc.property(madeFolders, (files) => {
      const { after } = repeg(files);
      for (const { peg } of venueOf(files).pegs) {
        const lines = (text: string) => text.split('\n');
        const before = lines(files.texts.get(`pegs/mill-pond/${peg}.md`)!);
        const now = lines(after.texts.get(`pegs/mill-pond/${Number(peg) + 1}.md`)!);
        const own = /^(peg|id|was):|^ {2,}(- peg|until):/;
        expect(now.filter((line) => !own.test(line))).toEqual(before.filter((line) => !own.test(line)));
      }
    }),
    { numRuns: 20 },
  );
});

test('the place of a retired stand may be numbered over, and its bags stay with it', () => {
  fc.assert(
    fc.property(madeFolders, (files) => {
      const gone = venueOf(files).pegs[0]!;
      const retired = changed(files, (content, staged) =>
        planRetire(content, { water: 'mill-pond', peg: gone.peg, from: DAY, why: 'Filled in' }, staged),
      );
      expect(retired.plan.faults).toEqual([]);
      const { after, plan } = repeg(retired.after, { shift: 1 });
      expect(plan.faults).toEqual([]);
      const venue = venueOf(after);
      expect(venue.retired).toMatchObject([{ peg: standId(gone), retired: { from: DAY, why: 'Filled in' } }]);
      expect(venue.pegs.map(({ peg }) => peg)).not.toContain(gone.peg);
      expect(bagsByStand(after)).toEqual(bagsByStand(files));
    }),
    { numRuns: 20 },
  );
});

test('a change before the last of the log is refused with the row of the log and the record', () => {
  expect(messages(smallVenue(), { from: '2026-05-02' }).slice(0, 3)).toEqual([
    'sessions/2026/sessions.csv:2:24 error Unexpected session of peg 1 on 2026-05-02, expected nothing of it on or after 2026-05-02, from which pegs/mill-pond/1.md is to say otherwise. Choose a later --from; or, where this was written with the new numbers already, take it out and put it back after the change. (change-day-log)',
    'sessions/2026/sessions.csv:3:24 error Unexpected session of peg 2 on 2026-05-02, expected nothing of it on or after 2026-05-02, from which pegs/mill-pond/2.md is to say otherwise. Choose a later --from; or, where this was written with the new numbers already, take it out and put it back after the change. (change-day-log)',
    'sessions/2026/sessions.csv:4:24 error Unexpected session of peg 10 on 2026-05-02, expected nothing of it on or after 2026-05-02, from which pegs/mill-pond/10.md is to say otherwise. Choose a later --from; or, where this was written with the new numbers already, take it out and put it back after the change. (change-day-log)',
  ]);
  // A bank round and a notice name numbers too.
  expect(new Set(repeg(smallVenue(), { from: DAY }).plan.faults.map(({ file }) => file))).toEqual(
    new Set(['rounds/2026-11-12-k7q2.csv', 'notices/2026-11-02-boards-off.md']),
  );
});

const LATE = '2026-11-20';

test.each([
  ['a water that is not there', { water: 'mil-pond' }, 'folder-water', 'Did you mean mill-pond?'],
  ['a run without a peg', { range: { first: 30, last: 40 } }, 'folder-range', 'expected numbers from 1 to 10'],
  ['a number below 1', { shift: -1 }, 'repeg-number', 'pegs/mill-pond/1.md:2:6'],
  ['a number somebody keeps', { range: { first: 1, last: 1 } }, 'repeg-taken', 'pegs/mill-pond/2.md:2 has it'],
] as const)('%s is refused, and nothing is staged', (_, change, rule, words) => {
  const { plan, after } = repeg(smallVenue(), { from: LATE, ...change });
  expect(plan.faults.map((fault) => fault.rule)).toContain(rule);
  expect(plan.faults.map(formatFault).join('\n')).toContain(words);
  expect(plan.changes).toEqual([]);
  expect(after.texts).toEqual(smallVenue().texts);
});

test('a day before the last change of the same number is refused, and one before the stand was made', () => {
  const again = repeg(repeg(smallVenue(), { from: LATE }).after, { from: LATE }).plan.faults;
  expect(again.map(({ rule, field }) => [rule, field])).toContainEqual(['change-day', 'was[0].until']);
  const since = smallVenue({ 'pegs/mill-pond/10.md': replacing('water:', 'since: 2026-11-21\nwater:') });
  expect(repeg(since, { from: LATE }).plan.faults.map(({ field }) => field)).toContain('since');
});

test('the guide’s day moves on where the change is later, and never back', () => {
  expect(repeg(smallVenue(), { from: '2026-11-25' }).plan.changes.at(-1)).toEqual({
    where: 'venue.md',
    words: 'guide-day: 2026-11-21 → 2026-11-25',
  });
  expect(repeg(smallVenue(), { from: LATE }).after.texts.get('venue.md')).toBe(smallVenue().texts.get('venue.md'));
});

test('a record written in a way no machine changes is refused, and told which', () => {
  const odd = smallVenue({ 'pegs/mill-pond/2.md': (text) => text.replace('hazards:', 'was: none\nhazards:') });
  const { plan } = repeg(odd, { from: LATE });
  expect(plan.faults.map(({ file, rule }) => [file, rule])).toEqual([['pegs/mill-pond/2.md', 'record-by-hand']]);
});
