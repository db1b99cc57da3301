import type { StagedFiles } from '../intake/staged-files.ts';
import { LogTable } from '../papers/log-table.ts';

/** Files of the log that name anglers. */
export function sessionFiles(paths: Iterable<string>): readonly string[] {
  return [...paths].filter((path) => /^sessions\/[^/]+\/sessions\.csv$/.test(path)).sort();
}

/**
 * Puts another reference, or none, in place of one throughout the log.
 * @returns how many sessions it stood in
 */
export function rewriteReference(files: StagedFiles, paths: readonly string[], ref: string, put: string): number {
  let count = 0;
  for (const path of paths) {
    const table = new LogTable(files.text(path), []);
    const own = table.rows().filter(({ angler }) => angler === ref).length;
    if (own === 0) continue;
    count += own;
    table.change('angler', ref, put);
    files.put(path, table.text());
  }
  return count;
}

/** Events in which both references fished: then they are two people. */
export function sharedEvents(files: StagedFiles, paths: readonly string[], a: string, b: string): readonly string[] {
  const eventsOf = (ref: string): readonly string[] =>
    paths.flatMap((path) =>
      new LogTable(files.text(path), []).rows().flatMap((row) => (row.angler === ref ? [row.event ?? ''] : [])),
    );
  const second = new Set(eventsOf(b));
  return [...new Set(eventsOf(a))].filter((event) => second.has(event));
}
