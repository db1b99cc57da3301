import { join } from 'node:path';
import { formatFaults } from '../../content/format-fault.ts';
import type { Followed } from './follow-folder.ts';

/** What stands over the page while the folder has faults: every one as a sentence, the first with its file and line. */
export function overlayOf(folder: string, { read, first }: Extract<Followed, { kind: 'faults' }>) {
  const errors = read.faults.filter(({ severity }) => severity === 'error');
  return {
    message: formatFaults(errors.slice(0, 20)).join('\n'),
    stack: '',
    plugin: 'venue folder',
    id: join(folder, first.file),
    loc: { file: join(folder, first.file), line: first.line ?? 1, column: first.column ?? 1 },
  };
}
