import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/** The path a guide was built for, as its first page says it: whatever the venue folder has come to say since. */
export function baseOfGuide(guide: string): string {
  return / data-guide-base="([^"]+)"/.exec(readFileSync(join(guide, 'index.html'), 'utf8'))?.[1] ?? '/';
}
