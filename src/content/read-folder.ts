import type { Dirent } from 'node:fs';
import { readdir, readFile, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { hiddenCharacterAt, visibleLine } from '../domain/hidden-characters.ts';
import { listed } from './did-you-mean.ts';
import type { Fault, LeftOut } from './fault.ts';
import { meantRecord } from './meant-record.ts';
import { pictureFault } from './picture-fault.ts';
import { faultOfFile } from './sources/source.ts';
import { placeAtOffset } from './sources/text-place.ts';
import { typed } from './typed-command.ts';
import { compareNaturally, type VenueFiles } from './venue-files.ts';

/** How large a venue folder may be. The folder comes from elsewhere: without bounds one file could exhaust the machine. */
export interface FolderLimits {
  readonly fileBytes: number;
  readonly files: number;
  readonly depth: number;
  readonly totalTextBytes: number;
}

export const FOLDER_LIMITS: FolderLimits = {
  fileBytes: 20 * 1024 * 1024,
  files: 50_000,
  depth: 8,
  totalTextBytes: 400 * 1024 * 1024,
};

const TEXT_ENDINGS = ['.md', '.csv', '.geojson'];
/** Each may unpack to some hundred megabytes. */
const PICTURES_AT_ONCE = 2;
const PHOTO_ENDINGS = ['.jpg', '.jpeg', '.png', '.webp', '.avif', '.svg'];

interface Found {
  readonly texts: Map<string, string>;
  readonly photos: Map<string, number>;
  readonly unread: Set<string>;
  readonly faults: Fault[];
  readonly leftOut: LeftOut[];
  /** Paths of pictures that were met and wait to be decoded. */
  readonly pictures: string[];
  readonly limits: FolderLimits;
  files: number;
  textBytes: number;
}

/**
 * Reads a venue folder into memory: the text of records, logs and maps, the size of pictures that can be decoded. Follows no link, so nothing
 * outside the folder is read; names that begin with a dot are passed over. What cannot be read becomes a fault.
 */
export async function readFolder(folder: string, limits: FolderLimits = FOLDER_LIMITS): Promise<VenueFiles> {
  const found: Found = {
    texts: new Map(),
    photos: new Map(),
    unread: new Set(),
    faults: [],
    leftOut: [],
    pictures: [],
    limits,
    files: 0,
    textBytes: 0,
  };
  const wrong = await folderFault(folder);
  if (wrong === null) {
    await readLevel(folder, '', 0, found);
    await readPictures(folder, found);
  } else found.faults.push(wrong);
  return found;
}

async function folderFault(folder: string): Promise<Fault | null> {
  const start = `Name a folder with --venue, or begin one with: ${typed('start FOLDER')}`;
  const fault = (rule: string, what: string) =>
    faultOfFile('', { rule, found: what, expected: 'a venue folder', mend: start });
  try {
    const about = await stat(folder);
    if (!about.isDirectory()) return fault('folder-missing', 'a file');
    const entries = await readdir(folder);
    if (entries.every(isHidden)) return fault('folder-empty', 'an empty folder');
    const venues = entries.includes('venue.md') ? [] : await venuesBelow(folder, entries);
    return venues.length === 0 ? null : venuesFault(venues);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    return fault('folder-missing', code === 'ENOENT' ? 'no such folder' : `a folder that cannot be read (${code})`);
  }
}

/** Folders in this one that are each a venue of their own. */
async function venuesBelow(folder: string, entries: readonly string[]): Promise<readonly string[]> {
  const own = await Promise.all(
    entries.map((name) =>
      isHidden(name)
        ? false
        : stat(join(folder, name, 'venue.md')).then(
            (about) => about.isFile(),
            () => false,
          ),
    ),
  );
  return entries.filter((_, index) => own[index] === true).sort(compareNaturally);
}

/** One level too high: one fault, where the files of all these venues would be a thousand. */
function venuesFault(venues: readonly string[]): Fault {
  const [first = ''] = venues;
  return faultOfFile('', {
    rule: 'folder-of-venues',
    found: `no venue.md, and ${listed(venues)} below with one`,
    expected: 'a venue folder',
    mend: `Name one of them (--venue …/${first}). For a guide to all of them write association.md here, with a line name: between two lines of ---.`,
  });
}

async function readLevel(folder: string, level: string, depth: number, found: Found): Promise<void> {
  const entries = await readable(found, level, () => readdir(join(folder, level), { withFileTypes: true }));
  if (entries === null) return;
  const visible = entries.filter(({ name }) => !isHidden(name)).sort((a, b) => compareNaturally(a.name, b.name));
  for (const entry of visible) {
    const path = level === '' ? entry.name : `${level}/${entry.name}`;
    if (entry.isDirectory()) {
      if (depth < found.limits.depth) await readLevel(folder, path, depth + 1, found);
      else leave(found, path, 'a folder', `It lies more than ${found.limits.depth} folders deep.`);
    } else await readEntry(folder, path, entry, found);
    if (found.files > found.limits.files) return;
  }
}

async function readEntry(folder: string, path: string, entry: Dirent, found: Found): Promise<void> {
  if (hiddenCharacterAt(path) !== -1 || path.includes('\n') || path.includes('\t')) {
    found.faults.push(hiddenName(path));
    return;
  }
  if (++found.files > found.limits.files) {
    found.faults.push(
      faultOfFile('', {
        rule: 'folder-files',
        found: `more than ${found.limits.files} files`,
        expected: `at most ${found.limits.files}`,
        mend: 'Point at the venue folder itself, not at a folder around it.',
      }),
    );
    return;
  }
  if (!entry.isFile())
    return leave(
      found,
      path,
      entry.isSymbolicLink() ? 'a link' : 'no file',
      'Only files that lie in the folder themselves are read.',
    );
  const ending = path.slice(path.lastIndexOf('.')).toLowerCase();
  if (path.startsWith('photos/')) {
    if (PHOTO_ENDINGS.includes(ending)) found.pictures.push(path);
    else leave(found, path, 'no picture', `Pictures end in ${PHOTO_ENDINGS.join(', ')}.`);
    return;
  }
  if (!TEXT_ENDINGS.some((known) => path.endsWith(known))) {
    const meant = meantRecord(path);
    if (meant !== null) return void found.faults.push(likeRecord(path, meant));
    return leave(found, path, 'a file of another kind', 'Records end in .md, logs in .csv, maps in .geojson.');
  }
  await readText(folder, path, found);
}

/** Decodes the pictures, which takes most of the time of a folder's reading, and notes them in the order in which they were met. */
async function readPictures(folder: string, found: Found): Promise<void> {
  const read: (number | Fault | null)[] = [];
  const waiting = found.pictures.entries();
  const decode = async () => {
    for (const [at, path] of waiting) read[at] = await readPicture(folder, path, found);
  };
  await Promise.all(Array.from({ length: PICTURES_AT_ONCE }, decode));
  for (const [at, path] of found.pictures.entries()) {
    const picture = read[at] ?? null;
    if (typeof picture === 'number') found.photos.set(path.slice('photos/'.length), picture);
    else if (picture !== null) {
      found.unread.add(path);
      found.faults.push(picture);
    }
  }
}

/** The size of a picture in bytes, or what is wrong with it; null where that is noted already. */
async function readPicture(folder: string, path: string, found: Found): Promise<number | Fault | null> {
  const about = await readable(found, path, () => stat(join(folder, path)));
  if (about === null) return null;
  const { size } = about;
  if (size > found.limits.fileBytes) {
    tooLarge(found, path, size, 'Save the picture smaller.');
    return null;
  }
  const bytes = await readable(found, path, () => readFile(join(folder, path)));
  return bytes === null ? null : ((await pictureFault(path, bytes)) ?? size);
}

async function readText(folder: string, path: string, found: Found): Promise<void> {
  const about = await readable(found, path, () => stat(join(folder, path)));
  if (about === null) return;
  const { size } = about;
  found.textBytes += size;
  if (size > found.limits.fileBytes) return tooLarge(found, path, size, 'Divide it, a year to a file.');
  if (found.textBytes > found.limits.totalTextBytes)
    return tooLarge(found, path, size, 'Take out what does not belong to the venue.');
  const bytes = await readable(found, path, () => readFile(join(folder, path)));
  if (bytes === null) return;
  try {
    // The mark stays: plainText takes it away, and what edits a file keeps it.
    found.texts.set(path, new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes));
  } catch {
    found.unread.add(path);
    found.faults.push(notUtf8(path, bytes));
  }
}

/** What the disk gives, or null and a fault where it refuses: no permission, or gone since it was listed. */
async function readable<T>(found: Found, path: string, read: () => Promise<T>): Promise<T | null> {
  try {
    return await read();
  } catch (error) {
    found.unread.add(path);
    found.faults.push(
      faultOfFile(path, {
        rule: 'file-unreadable',
        found: `a file the system does not let be read (${(error as NodeJS.ErrnoException).code})`,
        expected: 'a file that can be read',
        mend: 'Look at its permissions, and run this again.',
      }),
    );
    return null;
  }
}

/** A name that shows as another, or writes lines of its own into a terminal. */
function hiddenName(path: string): Fault {
  return faultOfFile(visibleLine(path), {
    rule: 'file-name',
    found: 'a name with a character that is not seen',
    expected: 'a name of letters, digits, hyphens and points',
    mend: 'Rename it; what is in it was not read.',
  });
}

function likeRecord(path: string, meant: string): Fault {
  return faultOfFile(path, {
    rule: 'file-ending',
    found: 'a file that looks like a record and is not read',
    expected: 'records that end in .md, logs in .csv, maps in .geojson',
    mend: `Did you mean ${meant}? Rename it, save it in that form, or move it out of the folder.`,
  });
}

function tooLarge(found: Found, path: string, size: number, mend: string): void {
  const mebibytes = (bytes: number) => `${(bytes / 1024 / 1024).toFixed(1)} MB`;
  found.unread.add(path);
  found.faults.push(
    faultOfFile(path, {
      rule: 'file-size',
      found: mebibytes(size),
      expected: `at most ${mebibytes(found.limits.fileBytes)} a file`,
      mend,
    }),
  );
}

function notUtf8(path: string, bytes: Uint8Array): Fault {
  const isUtf16 = (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff);
  // Decoded loosely, the first replacement character stands where the first wrong byte is.
  const loose = new TextDecoder('utf-8').decode(bytes);
  const place = isUtf16 ? { line: 1, column: 1 } : placeAtOffset(loose, Math.max(0, loose.indexOf('\uFFFD')));
  return faultOfFile(
    path,
    {
      rule: 'file-encoding',
      found: isUtf16 ? 'UTF-16 text' : 'bytes that are no UTF-8 text',
      expected: 'UTF-8 text',
      mend: 'Save it again as UTF-8 (a spreadsheet calls it "CSV UTF-8").',
    },
    place,
  );
}

function leave(found: Found, path: string, what: string, why: string): void {
  found.leftOut.push({ file: path, line: 1, what, why });
}

/** Hidden files of editors and systems, and what an intake keeps while it works. */
function isHidden(name: string): boolean {
  return name.startsWith('.');
}
