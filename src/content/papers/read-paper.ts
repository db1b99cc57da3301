import { isArchive } from './bounded-archive.ts';
import { MAX_PAPER_BYTES, type PaperRead } from './paper.ts';
import { readTextPaper } from './read-text-paper.ts';
import { readWorkbook } from './read-workbook.ts';

/** Reads a club's paper by what it is, not by its name. Never throws for what is in it. */
export function readPaper(file: string, bytes: Uint8Array): PaperRead {
  if (bytes.length > MAX_PAPER_BYTES) {
    return {
      ok: false,
      fault: {
        file,
        found: `a file of ${Math.round(bytes.length / 1e6)} MB`,
        expected: `at most ${MAX_PAPER_BYTES / 1024 / 1024} MB`,
        mend: 'Save the sheet of the match alone.',
      },
    };
  }
  return isArchive(bytes) ? readWorkbook(file, bytes) : readTextPaper(file, bytes);
}
