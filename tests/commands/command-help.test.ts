import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { commandHelp } from '../../src/commands/command-help.ts';

const COMMANDS = fileURLToPath(new URL('../../src/commands', import.meta.url));
const source = (name: string) => readFileSync(join(COMMANDS, name), 'utf8');
const words = [...source('venue.ts').matchAll(/^ {2}'?([a-z-]+)'?: \{\n {4}summary/gm)].map(([, word]) => word!);

test('the list of commands was found', () => expect(words.length).toBeGreaterThan(14));

test.each(words)('%s --help tells its options, no other, and an example of itself', (word) => {
  const help = commandHelp(word, 'a summary') ?? '';
  expect(help).toMatch(new RegExp(`\\nExample: .* ${word}\\b`));
  const told = [...help.matchAll(/^ {2}--([a-z-]+)/gm)].map(([, option]) => option!);
  const own = source(`${word}.ts`);
  // What the commands that print take stands in one place.
  const read = own.includes("from './print/") ? `${own}${source('print/print-guide.ts')}` : own;
  const taken = [...read.matchAll(/'?\b([a-z-]+)'?: \{ type: '(?:string|boolean)'/g)].map(([, option]) => option!);
  expect([...new Set([...told, 'venue'])].sort()).toEqual([...new Set([...taken, 'venue'])].sort());
});
