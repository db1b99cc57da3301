import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/**
 * The test files that put others in place of modules, so that they cannot share loaded modules with the rest: each needs a process of its own.
 * Found by what they call, so that nobody has to keep a list.
 * @param project folder of the project
 * @returns paths below it, in order
 */
export function filesThatReplaceModules(project: string): readonly string[] {
  return globSync('tests/**/*.test.ts', { cwd: project })
    .filter((path) => /\bvi\s*\.\s*(?:mock|doMock|resetModules)\(/.test(readFileSync(join(project, path), 'utf8')))
    .map((path) => path.replaceAll('\\', '/'))
    .sort();
}
