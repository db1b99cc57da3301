import { expect, test } from 'vitest';
import { FILE, messagesOf, replacing } from '../small-venue.ts';

const scum = (fields = '') =>
  `hazards:\n  - kind: algae-scum\n    place: the bay\n    severity: 5\n    likelihood: 5\n    found-on: 2026-11-10\n${fields}`;

test('tells that a peg whose record says open is published as closed: hard rule, band, platform', () => {
  expect(
    messagesOf({
      'pegs/mill-pond/1.md': replacing('hazards:\n', scum()),
      'pegs/mill-pond/2.md': replacing(
        'kind: slippery\n    place: the steps\n    severity: 2\n    likelihood: 3',
        'kind: wasps-bees\n    place: the steps\n    severity: 5\n    likelihood: 5',
      ),
      'pegs/mill-pond/10.md': replacing(
        'features:',
        'platform: { kind: timber, condition: unsafe, inspected-on: 2026-11-10 }\nfeatures:',
      ),
    }),
  ).toMatchInlineSnapshot(`
    [
      "pegs/mill-pond/1.md:9:11 warning Unexpected peg mill-pond/1 with status: open, published as closed: algae-scum (the bay), a hard rule, expected status: closed, or a record that keeps it in the draw. Write status: closed with status-reason and status-since; cleared-on once it is gone; or kept-open: { on, by, why } by whoever decides that it stays in the draw. (closed-by-record)",
      "pegs/mill-pond/2.md:9:11 warning Unexpected peg mill-pond/2 with status: open, published as closed: wasps-bees (the steps), its score is very high, out of the draw, expected status: closed, or a record that keeps it in the draw. Write status: closed with status-reason and status-since; cleared-on once it is gone; or kept-open: { on, by, why } by whoever decides that it stays in the draw. (closed-by-record)",
      "pegs/mill-pond/10.md:6:38 warning Unexpected peg mill-pond/10 with status: open, published as closed: its platform must not be used, expected status: closed, or a record that keeps it in the draw. Write status: closed with status-reason and status-since, or the platform’s condition once it has been put right. (closed-by-record)",
    ]
  `);
});

test('says nothing where somebody decided that the peg stays in the draw, or the hazard is cleared', () => {
  const keptOpen = '    kept-open: { on: 2026-11-11, by: Secretary, why: blown to the far bank }\n';
  expect(messagesOf({ 'pegs/mill-pond/1.md': replacing('hazards:\n', scum(keptOpen)) })).toEqual([]);
  expect(
    messagesOf({
      'pegs/mill-pond/1.md': replacing(
        'hazards:\n',
        scum('    cleared-on: 2026-11-12\n    cleared-by: Secretary\n    cleared-why: looked at and gone\n'),
      ),
    }),
  ).toEqual([]);
});

test('takes a band for closing where its meaning says so, unless the venue says otherwise', () => {
  const band = (rest: string) => ({
    [FILE.venue]: replacing(
      'permitted-reach:',
      `risk-bands:\n  - { from: 1, name: any, meaning: ${rest} }\npermitted-reach:`,
    ),
  });
  expect(messagesOf(band('Out of the draw.'))).toHaveLength(3);
  expect(messagesOf(band('Out of the draw., closes: false'))).toEqual([]);
  expect(messagesOf(band('Keep a close eye on it.'))).toEqual([]);
});

test('refuses what says nothing: line, distance or bearing of another hazard, kept-open at a line', () => {
  expect(
    messagesOf({
      'pegs/mill-pond/1.md': replacing(
        'hazards:\n',
        scum(
          '    distance: 40 m\n    cleared-on: 2026-11-12\n    cleared-by: Secretary\n    cleared-why: looked at and gone\n',
        ),
      ),
      'pegs/mill-pond/2.md': replacing(
        'hazards:\n',
        `hazards:\n  - kind: overhead-line\n    place: ahead\n    line: 11 kV line\n    severity: 5\n    likelihood: 1\n    found-on: 2026-11-10\n    kept-open: { on: 2026-11-11, by: Secretary, why: it is high }\n`,
      ),
    }).map((message) => message.match(/\(([a-z-]+)\)$/)?.[1]),
  ).toEqual(['hazard-line-field', 'kept-open-line']);
});

test('warns of a water whose lines nobody says to have surveyed', () => {
  expect(messagesOf({ [FILE.venue]: (text) => text.replace(/lines-surveyed:.*\n/, '') })).toMatchInlineSnapshot(`
    [
      "waters/mill-pond.md:2:1 warning Found no survey of the overhead lines at mill-pond, expected the day they were looked for, by which role, and from what; every sheet of this water says that it is missing. Have them surveyed and write lines-surveyed: { on: 2026-03-03, by: Bailiff, how: walked with the network operator’s plan } here, or in venue.md for all waters. (lines-surveyed)",
    ]
  `);
});
