import { globSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { rulesInSource } from './fault-rules.ts';

/** The rule of how a match takes its end pegs, a property of the same name and no fault. */
const NO_FAULT = ["'any' as const", "choice(['any', 'one-a-section', 'left-out'])"];
const words = rulesInSource().filter((word) => !NO_FAULT.includes(word));

test('the index of rules lists every word a fault may end with, once', async () => {
  const index = `# Rules of the checks

The word in brackets at the end of a fault names the rule it broke. These are all ${words.length} of them; the source says each as it is
written here, beside what is expected and how to mend it. The list is written by its test:
\`npm run test:unit -- tests/content/fault-rules.test.ts -u\`.

${words.map((word) => `- \`${word}\``).join('\n')}
`;
  await expect(index).toMatchFileSnapshot('../../src/content/rules.md');
});

test('each is a word of small letters and hyphens', () => {
  expect(words.filter((word) => !/^[a-z]+(?:-[a-z]+)*$/.test(word))).toEqual([]);
});

test('each is named by a test that meets it', () => {
  const tests = globSync('tests/**/*.ts')
    .map((path) => readFileSync(path, 'utf8'))
    .join('\n');
  expect(words.filter((word) => !new RegExp(`(?<![\\w-])${word}(?![\\w-])`).test(tests))).toEqual([]);
});
