import { expect, test } from 'vitest';
import { quoted, typed } from '../../src/content/typed-command.ts';

test('a command is told as it is typed in the project', () => {
  expect(typed('build')).toBe('npm run -s venue -- build');
});

test.each([
  ['content', 'content'],
  ['waters/alder-pool', 'waters/alder-pool'],
  ['C:\\club\\content', 'C:\\club\\content'],
  ['Étang', 'Étang'],
  ['My Venue', '"My Venue"'],
  ['a&b', '"a&b"'],
])('%s is typed as %s', (word, said) => {
  expect(quoted(word)).toBe(said);
});
