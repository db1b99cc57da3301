import { readFileSync, readSync, statSync } from 'node:fs';
import { MAX_PAPER_BYTES } from '../../content/papers/paper.ts';
import { UsageError } from '../read-arguments.ts';
import { NOTHING_CHANGED } from './ask-to-write.ts';

const STANDARD_INPUT = 0;
const PIECE_BYTES = 65_536;

/**
 * Bytes of a file, or of what is piped in where it is `-`. Of more than a paper may hold no more is read than tells its reader so.
 * @throws UsageError where it cannot be read
 */
export function fileBytes(file: string): Uint8Array {
  if (file === '-') return pipedBytes();
  try {
    const { size } = statSync(file);
    return size > MAX_PAPER_BYTES ? new Uint8Array(MAX_PAPER_BYTES + 1) : readFileSync(file);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    const why = code === 'ENOENT' ? `There is no file ${file}` : `${file} cannot be read (${code})`;
    throw new UsageError(`${why}. ${NOTHING_CHANGED}`);
  }
}

/**
 * All that is piped in.
 * @param read as `readSync` of standard input reads: the count of bytes put into a buffer, 0 at the end
 */
export function pipedBytes(read: (into: Uint8Array) => number = readInput): Uint8Array {
  const pieces: Uint8Array[] = [];
  for (let total = 0; total <= MAX_PAPER_BYTES; ) {
    const piece = new Uint8Array(PIECE_BYTES);
    const count = readOrEnd(read, piece);
    if (count === 0) break;
    pieces.push(piece.subarray(0, count));
    total += count;
  }
  return Buffer.concat(pieces);
}

function readInput(into: Uint8Array): number {
  return readSync(STANDARD_INPUT, into);
}

function readOrEnd(read: (into: Uint8Array) => number, piece: Uint8Array): number {
  for (;;) {
    try {
      return read(piece);
    } catch (error) {
      const { code } = error as NodeJS.ErrnoException;
      // The end of a pipe on Windows; elsewhere a pipe whose writer has nothing yet.
      if (code === 'EOF') return 0;
      if (code !== 'EAGAIN') throw new UsageError(`What is piped in cannot be read (${code}). ${NOTHING_CHANGED}`);
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 20);
    }
  }
}
