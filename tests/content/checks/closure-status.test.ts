import { expect, test } from 'vitest';
import { messagesOf, replacing } from '../small-venue.ts';

const closure = (lines: string) => () =>
  `---\ntitle: Closed for good\nkind: closure\nfrom: 2026-11-10\n${lines}\n---\n`;
const NOTICE = 'notices/2026-11-10-closed.md';
const CLOSED = replacing('status: open', 'status: closed\nstatus-since: 2026-10-01\nstatus-reason: Bank slipped');

test('accepts a closure without a last day whose pegs are closed in their records', () => {
  expect(messagesOf({ [NOTICE]: closure('pegs: [mill-pond/2]'), 'pegs/mill-pond/2.md': CLOSED })).toEqual([]);
});

test('accepts a closure with a last day over an open peg', () => {
  expect(messagesOf({ [NOTICE]: closure('until: 2026-12-01\npegs: [mill-pond/2]') })).toEqual([]);
});

test('accepts one that another notice has replaced, and one still to come', () => {
  expect(
    messagesOf({
      [NOTICE]: closure('pegs: [mill-pond/2]'),
      'notices/2026-11-15-open.md': () =>
        '---\ntitle: Open again\nkind: news\nfrom: 2026-11-15\nreplaces: 2026-11-10-closed\n---\n',
    }),
  ).toEqual([]);
  expect(
    messagesOf({
      'notices/2026-12-10-closed.md': () =>
        '---\ntitle: Closed\nkind: closure\nfrom: 2026-12-10\npegs: [mill-pond/2]\n---\n',
    }),
  ).toEqual([]);
});

test('refuses a closure for good of a peg whose record says open', () => {
  expect(messagesOf({ [NOTICE]: closure('pegs: [mill-pond/2]') })).toMatchInlineSnapshot(`
    [
      "notices/2026-11-10-closed.md:3:7 error Unexpected closure without a last day over pegs whose records say open: mill-pond/2, expected a last day (until), or records that say closed. Closed for good: write status: closed, status-since and status-reason in pegs/mill-pond/2.md. Closed for a time: give the notice its last day. (closure-status)",
    ]
  `);
});

test('refuses a closure for good of a whole water, in one fault', () => {
  expect(messagesOf({ [NOTICE]: closure('waters: [mill-pond]') })).toMatchInlineSnapshot(`
    [
      "notices/2026-11-10-closed.md:3:7 error Unexpected closure without a last day over pegs whose records say open: mill-pond/1, mill-pond/2, mill-pond/10, expected a last day (until), or records that say closed. Closed for good: write status: closed, status-since and status-reason in pegs/mill-pond/1.md and the others. Closed for a time: give the notice its last day. (closure-status)",
    ]
  `);
});
