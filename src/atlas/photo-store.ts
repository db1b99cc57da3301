import { createHash } from 'node:crypto';
import { mkdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import sharp, { type Sharp } from 'sharp';
import { MAX_PIXELS } from '../content/picture-fault.ts';
import { cacheFolder } from './cache-folder.ts';
import { projectRoot } from './project-root.ts';

export type PhotoFormat = 'avif' | 'webp' | 'jpg';

/** One published copy of a picture. */
export interface PhotoCopy {
  /** `3f9c0a12b4d5e6f7-960.avif`: the digest of what it was made from and how, its width, its format. */
  readonly name: string;
  readonly format: PhotoFormat;
  readonly width: number;
}

/** A picture of the venue folder and the copies that are published of it. */
export interface PhotoSet {
  /** Of the picture as it stands upright, in pixels. */
  readonly width: number;
  readonly height: number;
  readonly copies: readonly PhotoCopy[];
}

const WIDTHS = [480, 960, 1440];

/**
 * What is published of a picture: copies no wider than it is, in two modern formats and one that every browser shows.
 * @throws Error with a sentence for a file that is no picture
 */
export async function photoSet(file: string): Promise<PhotoSet> {
  const bytes = await readFile(file);
  const { autoOrient } = await open(bytes)
    .metadata()
    .catch((error: unknown) => {
      throw new Error(`${file} cannot be read as a picture (${String(error)}). Save it again as JPEG or PNG.`);
    });
  const { width, height } = autoOrient;
  const digest = createHash('sha256')
    .update(`${await makingDigest()}\0`)
    .update(bytes)
    .digest('hex')
    .slice(0, 16);
  const widths = [...new Set(WIDTHS.map((wanted) => Math.min(wanted, width)))];
  const copy = (format: PhotoFormat, wide: number): PhotoCopy => ({
    name: `${digest}-${wide}.${format}`,
    format,
    width: wide,
  });
  return {
    width,
    height,
    copies: [
      ...widths.map((wide) => copy('avif', wide)),
      ...widths.map((wide) => copy('webp', wide)),
      copy('jpg', Math.min(960, width)),
    ],
  };
}

/**
 * The bytes of a copy, made once and then kept in `folder`, by default beside the ratings. Turned upright, flattened on white; EXIF,
 * positions and every other block of metadata stay behind, and a drawing becomes pixels, so that nothing in it can run.
 */
export async function photoBytes(file: string, copy: PhotoCopy, folder: string = keptFolder()): Promise<Buffer> {
  const kept = join(folder, copy.name);
  const whole = await readKept(kept);
  if (whole !== null) return whole;
  const bytes = await encoded(await pixelsOf(await readFile(file), copy.width), copy.format);
  await keep(folder, kept, bytes);
  return bytes;
}

/** Makes and keeps the copies of a picture that are not kept yet, the bytes of `photoBytes`: all of one width from the same pixels. */
export async function keepCopies(file: string, folder: string = keptFolder()): Promise<void> {
  const missing: PhotoCopy[] = [];
  for (const copy of (await photoSet(file)).copies) {
    if ((await readKept(join(folder, copy.name))) === null) missing.push(copy);
  }
  if (missing.length === 0) return;
  const bytes = await readFile(file);
  for (const [width, copies] of Map.groupBy(missing, (copy) => copy.width)) {
    const pixels = await pixelsOf(bytes, width);
    for (const { name, format } of copies) await keep(folder, join(folder, name), await encoded(pixels, format));
  }
}

/** A kept copy: its digest, a line break, its bytes. Null where there is none, or where it is not what was kept. */
async function readKept(kept: string): Promise<Buffer | null> {
  try {
    const held = await readFile(kept);
    const end = held.indexOf('\n');
    const bytes = held.subarray(end + 1);
    return end > 0 && held.toString('latin1', 0, end) === digestOf(bytes) ? bytes : null;
  } catch {
    return null;
  }
}

/** Written beside its place and moved there. Where the disk refuses, the copy is only not kept. */
async function keep(folder: string, kept: string, bytes: Buffer): Promise<void> {
  const unfinished = `${kept}.${process.pid}`;
  try {
    await mkdir(folder, { recursive: true });
    await writeFile(unfinished, Buffer.concat([Buffer.from(`${digestOf(bytes)}\n`), bytes]));
    await rename(unfinished, kept);
  } catch {
    await rm(unfinished, { force: true }).catch(() => undefined);
  }
}

function digestOf(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}

let making: Promise<string> | undefined;

/** A digest of how copies are made: the code of this file and the version of the library that encodes. */
function makingDigest(): Promise<string> {
  making ??= readFile(join(projectRoot(), 'src', 'atlas', 'photo-store.ts')).then((code) =>
    createHash('sha256').update(JSON.stringify(sharp.versions)).update(code).digest('hex'),
  );
  return making;
}

function keptFolder(): string {
  return join(cacheFolder(), 'photos');
}

/** A picture upright, at its width and on white, as numbers: what every format of that width is encoded from. */
interface Pixels {
  readonly data: Buffer;
  readonly raw: { readonly width: number; readonly height: number; readonly channels: 1 | 2 | 3 | 4 };
}

async function pixelsOf(bytes: Buffer, width: number): Promise<Pixels> {
  const picture = open(bytes).autoOrient().resize({ width, withoutEnlargement: true }).flatten({ background: '#fff' });
  const { data, info } = await picture.raw().toBuffer({ resolveWithObject: true });
  return { data, raw: { width: info.width, height: info.height, channels: info.channels } };
}

function encoded({ data, raw }: Pixels, format: PhotoFormat): Promise<Buffer> {
  const picture = sharp(data, { raw });
  switch (format) {
    case 'avif':
      return picture.avif({ quality: 50, effort: 2 }).toBuffer();
    case 'webp':
      return picture.webp({ quality: 75 }).toBuffer();
    case 'jpg':
      return picture.jpeg({ quality: 78, mozjpeg: true }).toBuffer();
  }
}

function open(bytes: Buffer): Sharp {
  return sharp(bytes, { limitInputPixels: MAX_PIXELS, failOn: 'error' });
}
