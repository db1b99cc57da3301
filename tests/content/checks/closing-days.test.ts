import { expect, test } from 'vitest';
import { faultsOf, messagesOf, replacing } from '../small-venue.ts';

const PEG = 'pegs/mill-pond/10.md';
const closed = (since: string) => ({
  [PEG]: replacing('status: open', `status: closed\nstatus-reason: Boards rotten${since}`),
});

test('reads a closing without a day, and asks for it', () => {
  expect(messagesOf(closed(''))).toMatchInlineSnapshot(`
    [
      "pegs/mill-pond/10.md:7:9 warning Unexpected closed peg without status-since, expected the day it was closed, so that the guide can say how long it has been. Write status-since: YYYY-MM-DD below status. For a peg closed just now, the day of the closing, and set guide-day in venue.md to it or later; for an old closing whose day nobody knows, the first day it is known to have been closed. (closing-day)",
    ]
  `);
  expect(faultsOf(closed('')).every(({ severity }) => severity === 'warning')).toBe(true);
});

test('refuses a closing that is later than the day the guide states', () => {
  expect(messagesOf(closed('\nstatus-since: 2026-11-22'))).toMatchInlineSnapshot(`
    [
      "pegs/mill-pond/10.md:9:15 error Unexpected "2026-11-22" for status-since, expected no day after 2026-11-21, the guide-day of venue.md: a guide that knows this closing must not read like one from before it. Set guide-day in venue.md to 2026-11-22 or later. For a closing planned ahead, leave status: open and write a notice of kind closure with from: 2026-11-22. (closing-later)",
    ]
  `);
});

test('says nothing of a closing on the day of the guide or before it', () => {
  expect(messagesOf(closed('\nstatus-since: 2026-11-21'))).toEqual([]);
  expect(messagesOf(closed('\nstatus-since: 2026-10-01'))).toEqual([]);
});

test('asks for the day an unsafe platform was seen, single or listed, and not where the peg is kept open', () => {
  const platform = (words: string) => ({ [PEG]: replacing('status: open', `status: open\nplatform: ${words}`) });
  const rules = (words: string) =>
    faultsOf(platform(words)).flatMap(({ rule, field }) => (rule === 'closing-day' ? [field] : []));
  expect(rules('{ kind: timber, condition: unsafe }')).toEqual(['platform.condition']);
  expect(rules('[{ kind: timber, condition: "unsafe: boards off" }]')).toEqual(['platform']);
  expect(rules('{ kind: timber, condition: unsafe, inspected-on: 2026-11-20 }')).toEqual([]);
  expect(rules('{ kind: timber, condition: sound }')).toEqual([]);
  expect(
    rules('{ kind: timber, condition: unsafe, kept-open: { on: 2026-11-11, by: Secretary, why: bank is fished } }'),
  ).toEqual([]);
});
