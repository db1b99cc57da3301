import { IntlMessageFormat } from 'intl-messageformat';
import { describe, expect, it } from 'vitest';
import { dayWords, monthWords } from '../../src/words/day-words.ts';
import { LANGUAGES, type WordKey } from '../../src/words/languages.ts';
import { inEnglish, sayIn, sayOf } from '../../src/words/say.ts';
import { missingKeys } from './missing-keys.ts';

const english = LANGUAGES.en.messages;

/** The names of the places of a message, those within its plurals among them. */
function placesOf(message: string, tag: string): readonly string[] {
  const names = new Set<string>();
  const text = JSON.stringify(new IntlMessageFormat(message, tag, undefined, { ignoreTag: true }).getAst());
  for (const [, name] of text.matchAll(/"type":[16],"value":"(\w+)"/g)) names.add(name!);
  for (const [, name] of text.matchAll(/"value":"(\w+)","options"/g)) names.add(name!);
  return [...names].sort();
}

describe.each(Object.entries(LANGUAGES))('the words of %s', (_code, { tag, messages }) => {
  it('are all keys that English has, so that no message is written for nobody', () => {
    expect(Object.keys(messages).filter((key) => !(key in english))).toEqual([]);
  });

  it('can each be read, with the same places as in English', () => {
    for (const [key, message] of Object.entries(messages)) {
      expect([key, placesOf(message, tag)]).toEqual([key, placesOf(english[key as WordKey], 'en')]);
    }
  });

  it('name twelve months', () => {
    const say = sayOf({ name: '', tag, reviewed: true, messages });
    const months = Array.from({ length: 12 }, (_, index) => monthWords(index + 1, say));
    expect(new Set(months).size).toBe(12);
    expect(months.every((name) => name !== '')).toBe(true);
    expect(dayWords('2026-02-03', say)).toMatch(/^3 \p{L}+ 2026$/u);
  });
});

it('finds the places of a message', () => {
  expect(placesOf(english['bag.makeUp'], 'en')).toEqual(['bags', 'month', 'shares']);
});

it('has every message in Welsh too, and says that no native reader has read them', () => {
  expect(missingKeys(LANGUAGES.cy)).toEqual([]);
  expect(LANGUAGES.cy.reviewed).toBe(false);
});

it('counts as the language does', () => {
  const count = (sessions: number) => inEnglish('evidence.sessionsHere', { sessions });
  expect([0, 1, 2].map(count)).toEqual(['no sessions here', '1 session here', '2 sessions here']);
  expect(sayIn('cy')('evidence.sessionsHere', { sessions: 3 })).toBe('3 sesiwn yma');
});

it('keeps what is put into a message as text, whatever it looks like', () => {
  expect(inEnglish('bank.from', { place: '<b>{x}</b> #' })).toBe('From <b>{x}</b> #');
});

it('says in English what a language does not hold: a second language may begin with one word', () => {
  const say = sayOf({ name: 'Made up', tag: 'en-ZZ', reviewed: false, messages: { 'sky.never': 'nayver' } });
  expect([say('sky.never'), say('sky.localTime')]).toEqual(['nayver', 'local time']);
});
