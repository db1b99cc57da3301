import { existsSync } from 'node:fs';
import { enableCompileCache } from 'node:module';
import { resolve } from 'node:path';

/**
 * Has Node keep beside what else is kept what it compiles of this program, and take it from there: the same code, begun in a third of
 * the time. Only where something is kept already, so that a command that keeps nothing writes nothing.
 * @param mode `threads alone` for a command that writes pages: Astro compiles them anew under other names each time, and each would stay for good
 */
export function keepCompiledCode(
  folder: string,
  mode: 'all' | 'threads alone' = 'all',
  environment: NodeJS.ProcessEnv = process.env,
): void {
  if (!existsSync(folder)) return;
  // Whole, since the program comes to stand elsewhere while the pages are written.
  const code = resolve(folder, 'code');
  if (mode === 'all') enableCompileCache(code);
  // Threads know of it by the environment alone.
  environment.NODE_COMPILE_CACHE ??= code;
}
