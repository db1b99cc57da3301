import { expect, test } from 'vitest';
import { FILE, messagesOf, replacing } from '../small-venue.ts';

test('accepts a notice that replaces an earlier one', () => {
  expect(
    messagesOf({
      'notices/2026-11-10-boards-on.md': () =>
        '---\ntitle: Boards on\nkind: news\nfrom: 2026-11-10\nreplaces: 2026-11-02-boards-off\n---\n',
    }),
  ).toEqual([]);
});

test('refuses an unknown peg, water and notice', () => {
  expect(
    messagesOf({
      [FILE.notice]: replacing(
        'pegs: [mill-pond/2]',
        'pegs: [mill-pond/22]\nwaters: [mil-pond]\nreplaces: 2026-11-02-boards-of',
      ),
    }),
  ).toMatchInlineSnapshot(`
    [
      "notices/2026-11-02-boards-off.md:6:8 error Unexpected "mill-pond/22" for pegs[0], expected a peg of the venue, as water/peg. Did you mean mill-pond/2? (peg-unknown)",
      "notices/2026-11-02-boards-off.md:7:10 error Unexpected "mil-pond" for waters[0], expected one of mill-pond. Did you mean mill-pond? (water-unknown)",
      "notices/2026-11-02-boards-off.md:8:11 error Unexpected "2026-11-02-boards-of" for replaces, expected the name, without .md, of a file in notices/. Did you mean 2026-11-02-boards-off? (notice-unknown)",
    ]
  `);
});

test('refuses a last day before the first', () => {
  expect(messagesOf({ [FILE.notice]: replacing('until: 2026-12-01', 'until: 2026-10-01') })).toMatchInlineSnapshot(`
    [
      "notices/2026-11-02-boards-off.md:5:8 error Unexpected "2026-10-01" for until, expected no day before 2026-11-02, when it begins. Correct one of the two days. (notice-days)",
    ]
  `);
});

test('refuses notices that replace each other in a ring', () => {
  expect(
    messagesOf({ [FILE.notice]: replacing('until:', 'replaces: 2026-11-02-boards-off\nuntil:') }),
  ).toMatchInlineSnapshot(`
    [
      "notices/2026-11-02-boards-off.md:5:11 error Unexpected "2026-11-02-boards-off" for replaces, expected an earlier notice that does not lead back to this one. Take the line out of the earlier one of them. (notice-ring)",
    ]
  `);
});
