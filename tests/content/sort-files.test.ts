import { expect, test } from 'vitest';
import { readVenue } from '../../src/content/read-venue.ts';
import { messagesOf, smallVenue } from './small-venue.ts';

test('refuses records that stand where none of their kind is read', () => {
  expect(
    messagesOf({ 'pegs/5.md': '', 'sessions/26/events.csv': '', 'waters/Mill Pond.md': '', 'notices/old/a.md': '' }),
  ).toMatchInlineSnapshot(`
    [
      "notices/old/a.md:1:1 error Unexpected file where none of its kind is read, expected notices/2026-11-02-boards-off.md. Move or rename it; names of waters are small letters, digits and hyphens. (file-place)",
      "pegs/5.md:1:1 error Unexpected file where none of its kind is read, expected pegs/kiln-pool/23.md. Move or rename it; names of waters are small letters, digits and hyphens. (file-place)",
      "sessions/26/events.csv:1:1 error Unexpected file where none of its kind is read, expected sessions/2026/events.csv, sessions/2026/sessions.csv, sessions/2026/hours.csv. Move or rename it; names of waters are small letters, digits and hyphens. (file-place)",
      "waters/Mill Pond.md:1:1 error Unexpected file where none of its kind is read, expected waters/kiln-pool.md. Move or rename it; names of waters are small letters, digits and hyphens. (file-place)",
    ]
  `);
});

test('warns of a file that lies beside the folders', () => {
  expect(messagesOf({ 'minutes.md': 'Minutes' })).toMatchInlineSnapshot(`
    [
      "minutes.md:1:1 warning Unexpected file where none of its kind is read, expected venue.md, waters/kiln-pool.md, pegs/kiln-pool/23.md, notices/2026-11-02-boards-off.md, matches/2026-12-06-winter-three.md, leagues/2026-winter.md. Move or rename it; names of waters are small letters, digits and hyphens. (file-place)",
    ]
  `);
});

test('leaves a file for people out and says so', () => {
  const { venue, leftOut } = readVenue(smallVenue({ 'README.md': 'How we keep this.' }));
  expect(venue).not.toBeNull();
  expect(leftOut).toEqual([{ file: 'README.md', line: 1, what: 'a file for people', why: 'It holds no record.' }]);
});
