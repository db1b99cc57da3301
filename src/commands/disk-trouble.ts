const WORDS: Readonly<Record<string, string>> = {
  ENOSPC: 'The disk is full',
  EFBIG: 'A file became larger than the system lets it become',
  EDQUOT: 'The room that you may use on the disk is full',
  EROFS: 'The disk may only be read',
  EACCES: 'The system does not give the right to write or read there',
  EPERM: 'The system does not give the right to write or read there',
  EBUSY: 'Another program has it open',
  EMFILE: 'Too many files are open at once',
  EIO: 'The disk does not answer as it should',
};

/** Numbers under which the site builder's own core tells the same: of Windows its system error codes, elsewhere errno. */
const WINDOWS_NUMBERS: Readonly<Record<string, string>> = {
  4: 'EMFILE',
  5: 'EACCES',
  19: 'EROFS',
  32: 'EBUSY',
  112: 'ENOSPC',
};
const NUMBERS: Readonly<Record<string, string>> = {
  5: 'EIO',
  13: 'EACCES',
  24: 'EMFILE',
  27: 'EFBIG',
  28: 'ENOSPC',
  30: 'EROFS',
  69: 'EDQUOT',
  122: 'EDQUOT',
};

/** What a disk that refuses means to a person, or null where an error is none of a disk. Looks behind errors of the site builder. */
export function diskTrouble(error: unknown, platform: NodeJS.Platform = process.platform): string | null {
  const numbers = platform === 'win32' ? WINDOWS_NUMBERS : NUMBERS;
  for (let inner = error; inner instanceof Error; inner = inner.cause) {
    const { code, path } = inner as NodeJS.ErrnoException;
    const said =
      /\b(ENOSPC|EDQUOT|EFBIG|EROFS|EACCES|EPERM|EBUSY)\b/.exec(inner.message)?.[1] ??
      numbers[/\(os error (\d+)\)/.exec(inner.message)?.[1] ?? ''];
    const words = WORDS[code ?? ''] ?? WORDS[said ?? ''];
    if (words === undefined) continue;
    const where =
      path ?? /'([^']+)'$/.exec(inner.message)?.[1] ?? /Failed to write file in (\S+)/.exec(inner.message)?.[1];
    return `${words}${where === undefined ? '' : `: ${where}`}. Nothing was published; the guide built before is as it was. Make room, give the right to write or close what has it open, and run this again.`;
  }
  return null;
}
