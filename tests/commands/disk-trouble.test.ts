import { expect, test } from 'vitest';
import { diskTrouble } from '../../src/commands/disk-trouble.ts';

const refused = (code: string) => Object.assign(new Error(`${code}: refused`), { code, path: 'C:\\club\\dist' });
/** As the site builder's core says it, behind an error of its own. */
const behind = (number: number) =>
  new Error('The build failed', { cause: new Error(`Failed to write file in dist: refused (os error ${number})`) });

test.each([
  ['ENOSPC', 'The disk is full'],
  ['EBUSY', 'Another program has it open'],
  ['EPERM', 'The system does not give the right'],
])('%s is told in words, with the place', (code, words) => {
  expect(diskTrouble(refused(code))).toMatch(new RegExp(`^${words}.*C:\\\\club\\\\dist`));
});

// errno.h of Linux; Microsoft, "System Error Codes (0-499)".
test.each([
  ['linux', 28, 'The disk is full'],
  ['linux', 5, 'The disk does not answer'],
  ['win32', 112, 'The disk is full'],
  ['win32', 5, 'The system does not give the right'],
  ['win32', 32, 'Another program has it open'],
] as const)('on %s the number %i is told in words', (platform, number, words) => {
  expect(diskTrouble(behind(number), platform)).toContain(words);
});

test('what is none of a disk is none here', () => {
  expect(diskTrouble(new TypeError('the tide is out'))).toBeNull();
});
