import { expect, it } from 'vitest';
import { sayAll } from '../../src/client/page-words.ts';
import { inEnglish } from '../../src/words/say.ts';

it('says a list of things one after another, and nothing of none', () => {
  expect(sayAll([{ key: 'typed.elsewhere' }, { key: 'typed.noPegHere', values: { peg: '9' } }], inEnglish)).toBe(
    'Elsewhere there is: There is no peg 9 here.',
  );
  expect(sayAll([], inEnglish)).toBe('');
});
