import { readFileSync, statSync } from 'node:fs';
import { MAX_PAPER_BYTES } from '../../content/papers/paper.ts';
import { UsageError } from '../read-arguments.ts';
import { NOTHING_CHANGED } from './ask-to-write.ts';

/**
 * Bytes of a file, or of what is piped in where it is `-`.
 * @throws UsageError where it cannot be read
 */
export function fileBytes(file: string): Uint8Array {
  if (file === '-') return readFileSync(0);
  try {
    const { size } = statSync(file);
    // Not read at all: the reader refuses it by its length.
    return size > MAX_PAPER_BYTES ? new Uint8Array(MAX_PAPER_BYTES + 1) : readFileSync(file);
  } catch (error) {
    throw new UsageError(`${file} cannot be read (${(error as NodeJS.ErrnoException).code}). ${NOTHING_CHANGED}`);
  }
}
