import { globSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it, test } from 'vitest';
import { CORRECTIONS } from './corrections.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

/** What is read of a source: comments are for those who work on it. */
function readWords(path: string): string {
  const text = readFileSync(`${ROOT}/${path}`, 'utf8');
  if (!/\.(?:ts|astro)$/.test(path)) return text;
  return text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/^\s*\/\/.*$/gm, '');
}

/** All that words are written in: messages, templates, sentences of every room, the format's page and the demo venue. */
const WRITTEN = [
  ...globSync('src/words/en/*.json', { cwd: ROOT }),
  ...globSync('src/**/*.astro', { cwd: ROOT }),
  ...globSync('src/{atlas,client,commands,content,domain,match-day,ratings,planning,words}/**/*.{ts,md}', {
    cwd: ROOT,
  }),
  ...globSync('content/**/*.md', { cwd: ROOT }),
].map((path) => ({ path, words: readWords(path) }));

it('reads all that is written', () => {
  expect(WRITTEN.length).toBeGreaterThan(500);
  expect(WRITTEN.some(({ words }) => words.includes('Which peg have you drawn?'))).toBe(true);
});

test.each(CORRECTIONS)('$line', ({ not }) => {
  const said = WRITTEN.flatMap(({ path, words }) => {
    const found = not.exec(words);
    return found === null ? [] : [`${path}: ${words.slice(Math.max(0, found.index - 30), found.index + 60)}`];
  });
  expect(said).toEqual([]);
});
