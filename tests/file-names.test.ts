import { readdirSync } from 'node:fs';
import { basename } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const SOURCE = fileURLToPath(new URL('../src', import.meta.url));

test('no two files of the source bear one name, but a command, which is called what a user types', () => {
  const places = new Map<string, string[]>();
  for (const path of readdirSync(SOURCE, { recursive: true, encoding: 'utf8' })) {
    if (!path.endsWith('.ts') || /^commands\/[^/]+\.ts$/.test(path)) continue;
    places.set(basename(path), [...(places.get(basename(path)) ?? []), path]);
  }
  expect(places.size).toBeGreaterThan(700);
  expect([...places.values()].filter(({ length }) => length > 1)).toEqual([]);
});
