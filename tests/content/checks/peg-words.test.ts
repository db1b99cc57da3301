import { expect, test } from 'vitest';
import { FILE, messagesOf, replacing } from '../small-venue.ts';

test('accepts a closed peg that says why', () => {
  expect(
    messagesOf({
      [FILE.peg]: replacing('status: open', 'status: closed\nstatus-since: 2026-10-01\nstatus-reason: Boards rotten'),
    }),
  ).toEqual([]);
});

test('refuses a closed peg without a reason', () => {
  expect(
    messagesOf({ [FILE.peg]: replacing('status: open', 'status: closed\nstatus-since: 2026-10-01') }),
  ).toMatchInlineSnapshot(`
    [
      "pegs/mill-pond/1.md:7:9 error Unexpected closed peg without a reason, expected status-reason with why it is closed. Add a line status-reason: it stands wherever the peg appears. (closed-reason)",
    ]
  `);
});

test('refuses a feature venue.md does not list, and one named twice', () => {
  expect(
    messagesOf({ [FILE.peg]: replacing('features: [corner]', 'features: [cornr, reeds, reeds]') }),
  ).toMatchInlineSnapshot(`
    [
      "pegs/mill-pond/1.md:6:12 error Unexpected "cornr" for features[0], expected one of corner, reeds. Did you mean corner? (feature-unknown)",
      "pegs/mill-pond/1.md:6:26 error Unexpected "reeds" a second time for features[2], expected each feature once. Take one of the two out. (feature-duplicate)",
    ]
  `);
});
