import { describe, expect, it } from 'vitest';
import type { Language } from '../../src/domain/language.ts';
import { fillWords } from '../../src/words/fill-words.ts';
import { LANGUAGES } from '../../src/words/languages.ts';
import { type inEnglish, sayIn, wordsForScripts } from '../../src/words/say.ts';
import { SCRIPT_WORDS } from './script-words.ts';

/** Every place of every message of a script. */
const NAMES =
  'about at bags club counts count day depth each file gap hours least line matches month most name own peg pegs';
const MORE = 'percent spread surveyed target time typed water weight what';
const valuesOf = (count: number) =>
  Object.fromEntries([...NAMES.split(' '), ...MORE.split(' ')].map((name) => [name, count]));

describe.each(Object.entries(LANGUAGES))('the words of scripts in %s', (code, { tag }) => {
  it('are said on the phone as the library of the build says them, whatever the number', () => {
    const messages = wordsForScripts(code as Language, SCRIPT_WORDS);
    expect(Object.keys(messages).length).toBeGreaterThan(100);
    for (const [key, message] of Object.entries(messages)) {
      for (const count of [0, 1, 2, 3, 6, 21, 1234]) {
        const built = sayIn(code as Language)(key as Parameters<typeof inEnglish>[0], valuesOf(count));
        expect([key, fillWords(message, valuesOf(count), tag)]).toEqual([key, built]);
      }
    }
  });
});

it('takes the form that a number has of its own before that of its kind', () => {
  const message = '{pegs, plural, =0 {no peg} one {# peg of {water}} other {# pegs}} here';
  const said = [0, 1, 2].map((pegs) => fillWords(message, { pegs, water: 'Kiln {Pool}' }, 'en-GB'));
  expect(said).toEqual(['no peg here', '1 peg of Kiln {Pool} here', '2 pegs here']);
});

it('names the place that was left empty', () => {
  expect(() => fillWords('Peg {peg}', {}, 'en-GB')).toThrow('has a place peg');
});
