import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { codeDigest } from '../../src/atlas/code-digest.ts';

let root: string;
const write = (name: string, text: string) => writeFile(join(root, name), text);

beforeEach(async () => {
  root = await mkdtemp(join(tmpdir(), 'peg-atlas-code-'));
  await mkdir(join(root, 'src'));
  for (const name of ['near', '@far/away', 'unused']) {
    await mkdir(join(root, 'node_modules', name), { recursive: true });
    await write(`node_modules/${name}/package.json`, '{"version":"1.0.0"}');
  }
  await write('src/entry.ts', "import { a } from './a.ts';\nexport type { B } from '../b.ts';\nimport 'node:fs';\n");
  await write('src/a.ts', "import {\n  one,\n  two,\n} from 'near/part';\nconst later = () => import('./later.ts');\n");
  await write('src/later.ts', "import '@far/away/deep/file';\nimport { a } from './a.ts';\n");
  await write('b.ts', 'export type B = 1;\n');
  await write('src/other.ts', "import 'unused';\n");
});
afterEach(() => rm(root, { recursive: true }));

const digest = () => codeDigest(root, 'src/entry.ts');

test.each([
  [
    'a file that is imported',
    'src/a.ts',
    "import {\n  one,\n  two,\n} from 'near/part';\nconst later = () => import('./later.ts'); // 2\n",
  ],
  ['a file of types above the folder', 'b.ts', 'export type B = 2;\n'],
  ['a file that is imported later', 'src/later.ts', '\n'],
  ['a library', 'node_modules/near/package.json', '{"version":"1.0.1"}'],
  ['a library in a scope', 'node_modules/@far/away/package.json', '{"version":"2.0.0"}'],
])('changes with %s', async (_, name, text) => {
  const before = await digest();
  await write(name, text);
  expect(await digest()).not.toBe(before);
});

test.each([
  ['a file that nothing imports', 'src/other.ts', 'export const n = 2;\n'],
  ['a library that nothing imports', 'node_modules/unused/package.json', '{"version":"3.0.0"}'],
])('does not change with %s', async (_, name, text) => {
  const before = await digest();
  await write(name, text);
  expect(await digest()).toBe(before);
});
