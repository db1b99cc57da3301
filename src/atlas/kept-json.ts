import { createHash } from 'node:crypto';
import { mkdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { dirname } from 'node:path';

/** What was kept in a file, as `keepJson` wrote it. Null where there is none, or where it is not what was kept. */
export async function keptJson<Content>(file: string): Promise<Content | null> {
  try {
    const text = await readFile(file, 'utf8');
    const end = text.indexOf('\n');
    const json = text.slice(end + 1);
    return end > 0 && text.slice(0, end) === digestOf(json) ? (JSON.parse(json) as Content) : null;
  } catch {
    return null;
  }
}

/**
 * Keeps something behind its digest: written beside its place and then moved there, so that no reader ever meets half a
 * file. Says whether it is kept; on a disk that is full or read-only it is not, and nothing else is wrong.
 */
export async function keepJson(file: string, content: unknown): Promise<boolean> {
  const json = JSON.stringify(content);
  const unfinished = `${file}.${process.pid}`;
  try {
    await mkdir(dirname(file), { recursive: true });
    await writeFile(unfinished, `${digestOf(json)}\n${json}`);
    await rename(unfinished, file);
    return true;
  } catch {
    await rm(unfinished, { force: true }).catch(() => undefined);
    return false;
  }
}

/** SHA-256 of a text, as hexadecimal digits. */
export function digestOf(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}
