import { existsSync } from 'node:fs';
import { enableCompileCache } from 'node:module';
import { resolve } from 'node:path';

/**
 * Has Node keep beside what else is kept what it compiles of this program, and take it from there, in this thread and in those it starts:
 * the same code, begun in a third of the time. Only where something is kept already, so that a command that keeps nothing writes nothing.
 */
export function keepCompiledCode(folder: string, environment: NodeJS.ProcessEnv = process.env): void {
  if (!existsSync(folder)) return;
  // Whole, since the program comes to stand elsewhere while the pages are written.
  const code = resolve(folder, 'code');
  const { directory } = enableCompileCache(code);
  // Threads know of it by the environment alone.
  if (directory !== undefined) environment.NODE_COMPILE_CACHE ??= code;
}
