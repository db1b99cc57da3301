import { expect, it, vi } from 'vitest';
import { pegSheet } from '../../src/atlas/peg-sheet.ts';
import { pageLanguage } from '../../src/layouts/page-language.ts';
import { LANGUAGES } from '../../src/words/languages.ts';
import { wordsForScripts } from '../../src/words/say.ts';
import { exampleAtlas } from '../atlas/example-atlas.ts';
import { missingKeys } from './missing-keys.ts';

/** A language that nobody speaks, added where a contributor would add one. The worked example of DEVELOPERS.md is this one. */
vi.mock('../../src/words/languages.ts', async (load) => {
  const real = await load<typeof import('../../src/words/languages.ts')>();
  const messages = { 'sky.never': 'nayver' };
  const xx = { name: 'Made up', tag: 'en-ZZ', reviewed: false, messages };
  return { ...real, LANGUAGES: { ...real.LANGUAGES, xx } };
});

const english = exampleAtlas();
const madeUp = exampleAtlas();
Object.assign(madeUp, { venue: { ...english.venue, settings: { ...english.venue.settings, language: 'xx' } } });
const of = LANGUAGES as unknown as Record<string, (typeof LANGUAGES)['cy']>;

it('speaks on the pages of an angler, and English on those of the club', () => {
  const { say, tag, reviewed, englishPart } = pageLanguage('xx' as 'cy', '/[water]/[peg]');
  expect([say('sky.never'), tag, reviewed, englishPart]).toEqual(['nayver', 'en-ZZ', false, 'en-GB']);
  expect(pageLanguage('xx' as 'cy', '/register').tag).toBe('en-GB');
});

it('makes a whole sheet from two messages: what it does not hold is said in English', () => {
  const [here, there] = [pegSheet(english, 'pit/1'), pegSheet(madeUp, 'pit/1')];
  expect(there.depth).toEqual(here.depth);
  expect(there.safety).toEqual(here.safety);
});

it('gives the scripts of a page in English what it does not hold', () => {
  const words = wordsForScripts('xx' as 'cy', ['sky.never', 'kept.takeOut', 'sky.local']);
  expect(words).toEqual({ 'sky.never': 'nayver', 'kept.takeOut': 'Take out' });
});

it('lists what is still to be put into it', () => {
  const missing = missingKeys(of.xx!);
  expect(missing).not.toContain('sky.never');
  expect(missing).toContain('sky.localTime');
  expect(missing.length).toBe(Object.keys(LANGUAGES.en.messages).length - 1);
  expect(missingKeys(LANGUAGES.cy)).toEqual([]);
});
