import { join, sep } from 'node:path';
import { projectRoot } from './project-root.ts';

/**
 * Where the code of a thread lies: of a package the compiled file, since Node strips no types of what is installed.
 * @param name of a file of this folder, without its ending
 */
export function threadCode(name: string, root: string = projectRoot()): string {
  return root.split(sep).includes('node_modules')
    ? join(root, 'lib', 'atlas', `${name}.js`)
    : join(root, 'src', 'atlas', `${name}.ts`);
}
