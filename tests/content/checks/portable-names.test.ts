import { expect, test } from 'vitest';
import { FILE, messagesOf } from '../small-venue.ts';

const record = (peg: string) => `---\npeg: "${peg}"\nwater: mill-pond\n---\n`;

test.each(['aux', 'con', 'lpt1'])('warns of %s, which Windows keeps for a device', (name) => {
  expect(messagesOf({ [`notices/${name}.md`]: record('1') }).filter((line) => line.includes('windows'))).toHaveLength(
    1,
  );
});

test('warns of two names that differ in capitals alone, once', () => {
  const twin = FILE.peg.replace('mill-pond', 'Mill-pond');
  expect(messagesOf({ [twin]: record('1') }).filter((line) => line.includes('capitals alone'))).toEqual([
    `${twin}:1:1 warning Unexpected name that differs from ${FILE.peg} in capitals alone, expected names that every system tells apart. Rename one of the two: a copy of the folder on Windows or macOS would be without the other. (file-name-capitals)`,
  ]);
});
