import { globSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { LANGUAGES, type WordKey } from '../../src/words/languages.ts';
import { SCRIPT_WORDS } from './script-words.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const read = (pattern: string) =>
  globSync(pattern, { cwd: ROOT }).map((path) => ({ path, text: readFileSync(`${ROOT}/${path}`, 'utf8') }));
const SOURCES = [...read('src/**/*.astro'), ...read('src/**/*.ts')].filter(
  ({ path }) => !path.startsWith('src/words/l'),
);
const KEYS = Object.keys(LANGUAGES.en.messages) as WordKey[];

/** Keys put together where they are said, from what else is there: `evidence.${evidence}`. */
const PUT_TOGETHER = ['evidence.thin', 'evidence.fair', 'evidence.solid', 'contents.findPeg'];

it('says every message somewhere: none is put into other languages for nobody', () => {
  const all = SOURCES.map(({ text }) => text).join('\n');
  const unsaid = KEYS.filter((key) => !all.includes(`'${key}'`) && !all.includes(`"${key}"`));
  expect(unsaid.filter((key) => !PUT_TOGETHER.includes(key))).toEqual([]);
});

/** Which page brings which scripts their words. */
const PAGES: readonly (readonly [brings: string, scripts: string])[] = [
  ['src/pages/draw/*.astro', 'src/client/pace/*.ts'],
  ['src/pages/search/index.astro', 'src/client/search/*.ts'],
  ['src/pages/compare/*.astro', 'src/client/peg-table/{compare-pegs,kept-pegs}.ts'],
  ['src/components/PegChoice.astro', 'src/client/peg-table/{choose-pegs,kept-pegs}.ts'],
  ['src/components/PegFinder.astro', 'src/client/find-peg.ts'],
];

describe.each(PAGES)('%s', (brings, scripts) => {
  const [page] = read(brings);
  const brought = [.../<PageWords of=\{\[([^\]]*)\]\}/.exec(page!.text)![1]!.matchAll(/'([^']+)'/g)].map(
    ([, of]) => of!,
  );

  it('brings all that its scripts say', () => {
    const said = read(scripts).flatMap(({ text }) => KEYS.filter((key) => text.includes(`'${key}'`)));
    expect(said.length).toBeGreaterThan(2);
    const wanting = said.filter((key) => !brought.some((of) => key === of || key.startsWith(`${of}.`)));
    expect(wanting).toEqual([]);
  });

  it('brings messages that there are', () => {
    expect(brought.filter((of) => !KEYS.some((key) => key === of || key.startsWith(`${of}.`)))).toEqual([]);
  });
});

it('holds every key of scripts to what a phone can say', () => {
  const said = read('src/client/**/*.ts').flatMap(({ text }) => KEYS.filter((key) => text.includes(`'${key}'`)));
  const known = [...SCRIPT_WORDS, 'answer.poorDay', 'answer.typical', 'answer.goodDay'];
  expect(said.filter((key) => !known.some((of) => key === of || key.startsWith(`${of}.`)))).toEqual([]);
});
