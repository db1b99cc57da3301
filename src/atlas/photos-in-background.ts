import { existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { Worker } from 'node:worker_threads';
import { cacheFolder } from './cache-folder.ts';
import { photoSet } from './photo-store.ts';
import { threadCode } from './thread-code.ts';

/**
 * Makes the copies of photographs that are not kept yet, in a thread of its own: between two steps of a copy the thread that writes
 * the pages would let the encoder wait for it. A thread that fails leaves them to the pages that ask for them.
 * @param signal ends the work where nobody waits for it any more
 */
export async function photosInBackground(files: readonly string[], signal: AbortSignal): Promise<void> {
  const cache = resolve(cacheFolder());
  if (signal.aborted || (await areKept(files, join(cache, 'photos')))) return;
  const worker = new Worker(threadCode('background-photos'), {
    workerData: files,
    // Where the caller stands changes while the pages are written.
    env: { ...process.env, PEG_ATLAS_CACHE: cache },
  });
  signal.addEventListener('abort', () => void worker.terminate(), { once: true });
  await new Promise<void>((done) => {
    worker.on('error', () => done());
    worker.on('exit', () => done());
  });
}

async function areKept(files: readonly string[], folder: string): Promise<boolean> {
  try {
    const sets = await Promise.all(files.map(photoSet));
    return sets.every(({ copies }) => copies.every(({ name }) => existsSync(join(folder, name))));
  } catch {
    return false;
  }
}
