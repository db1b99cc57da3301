import { readFile, stat } from 'node:fs/promises';
import type { Fault } from '../../content/fault.ts';
import { cleanPhoto } from '../../content/intake/clean-photo.ts';
import type { RoundToTake } from '../../content/intake/plan-intake.ts';
import { readRoundFile } from '../../content/round-file/read-round-file.ts';
import type { RoundFile } from '../../content/round-file/round-file.ts';
import { ROUND_LIMITS } from '../../content/round-file/round-limits.ts';

/** Reads the files of rounds and cleans their photos. All faults of all files at once. */
export async function readRounds(paths: readonly string[]): Promise<{ rounds: RoundToTake[]; faults: Fault[] }> {
  const rounds: RoundToTake[] = [];
  const faults: Fault[] = [];
  for (const file of paths) {
    const text = await textOf(file);
    if (typeof text !== 'string') {
      faults.push(text);
      continue;
    }
    const read = readRoundFile(text, file);
    faults.push(...read.faults);
    if (read.round === null) continue;
    const photos = await cleanPhotos(read.round, file);
    faults.push(...photos.faults);
    rounds.push({ file, round: read.round, photos: photos.cleaned });
  }
  return { rounds, faults };
}

/** The size is looked at first: a file of any size is refused without being read. */
async function textOf(file: string): Promise<string | Fault> {
  try {
    const { size } = await stat(file);
    if (size > ROUND_LIMITS.fileBytes) {
      const most = ROUND_LIMITS.fileBytes / 1024 / 1024;
      const found = `${Math.round(size / 1024 / 1024)} MB`;
      return fault(
        file,
        'round-size',
        found,
        `at most ${most} MB`,
        'No phone hands over a round as large as this. Choose the file whose name begins with bank-round.',
      );
    }
    return await readFile(file, 'utf8');
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    const found = code === 'ENOENT' ? 'no such file' : `a file that cannot be read (${code})`;
    return fault(file, 'round-missing', found, 'the file of a bank round', 'Check its name and folder.');
  }
}

async function cleanPhotos(
  round: RoundFile,
  file: string,
): Promise<{ cleaned: Map<string, Uint8Array>; faults: Fault[] }> {
  const cleaned = new Map<string, Uint8Array>();
  const faults: Fault[] = [];
  for (const { id, water, peg, jpeg } of round.photos) {
    const bytes = await cleanPhoto(jpeg);
    if (bytes !== null) cleaned.set(id, bytes);
    else {
      const found = `a photo of peg ${water}/${peg} that is no picture`;
      faults.push(
        fault(
          file,
          'round-photo',
          found,
          'a JPEG picture',
          'Delete that photo from the round on the phone and hand it over again.',
        ),
      );
    }
  }
  return { cleaned, faults };
}

function fault(file: string, rule: string, found: string, expected: string, mend: string): Fault {
  return { file, line: 1, column: 1, field: '', rule, found, expected, mend, severity: 'error' };
}
