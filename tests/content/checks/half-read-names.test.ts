import { expect, test } from 'vitest';
import { FILE, messagesOf, replacing } from '../small-venue.ts';

const rules = (changes: Parameters<typeof messagesOf>[0]): readonly string[] =>
  messagesOf(changes).map((message) => `${/^\S+/.exec(message)![0]} ${/\(([a-z-]+)\)$/.exec(message)![1]}`);

test('tells of a peg and an event that are unknown beside whatever else is wrong with the row', () => {
  expect(rules({ [FILE.sessions]: replacing(',A,10,a-9x9x9x,dnw,,', ',A,77,a-9x9x9x,dwn,-,') })).toEqual([
    'sessions/2026/sessions.csv:4:24 peg-unknown',
    'sessions/2026/sessions.csv:4:36 field-word',
    'sessions/2026/sessions.csv:4:40 weight-mark',
  ]);
  expect(
    rules({
      [FILE.sessions]: replacing('2026-05-02-mill-pond,A,10,a-9x9x9x', '2026-05-02-mill-pnd,A,10,Ada Quill'),
    }),
  ).toEqual(['sessions/2026/sessions.csv:4:1 event-unknown', 'sessions/2026/sessions.csv:4:26 angler-reference']);
});

test('tells of an unknown water beside a wrong cell of the same event', () => {
  expect(rules({ [FILE.events]: replacing(',mill-pond,match,5,', ',mil-pond,match,five,') })).toEqual([
    'sessions/2026/events.csv:2:33 water-unknown',
    'sessions/2026/events.csv:2:48 number',
  ]);
});

test('tells each fault of a row once: a peg that cannot be read is not unknown too', () => {
  expect(rules({ [FILE.sessions]: replacing(',A,10,', ',A,ten!,') })).toEqual([
    'sessions/2026/sessions.csv:4:24 peg-name',
  ]);
});

test('leaves a number that a post carried in former days to the row’s own fault', () => {
  const renumbered = replacing('peg: "10"', 'peg: "10"\nid: mp-10x\nwas: [{ peg: "3", until: 2026-06-01 }]');
  const broken = replacing(',A,10,a-9x9x9x,dnw,,', ',A,3,a-9x9x9x,dnw,-,');
  expect(rules({ [FILE.sessions]: broken, 'pegs/mill-pond/10.md': renumbered })).toEqual([
    'sessions/2026/sessions.csv:4:39 weight-mark',
  ]);
});

test.each([
  ['a list of parts that is none', replacing('bag-parts:', 'bag-parts: nonsense\nspare:'), 'field-shape'],
  ['one part that cannot be read', replacing('id: silvers', 'id: Sil vers'), 'bag-part-id'],
  ['a list under another name', replacing('bag-parts:', 'bagparts:'), 'field-unknown'],
  ['a list of features that is none', replacing('features:', 'features: nonsense\nspare:'), 'field-shape'],
])('blames nothing but venue.md for %s', (_, change, rule) => {
  const told = rules({ [FILE.venue]: change });
  expect(told.filter((one) => !one.startsWith('venue.md'))).toEqual([]);
  expect(told.join()).toContain(rule);
});
