import { createHash } from 'node:crypto';
import { mkdir, readFile, rename, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import sharp, { type Sharp } from 'sharp';
import { MOST_PIXELS } from '../content/picture-fault.ts';
import { projectRoot } from './project-root.ts';

export type PhotoFormat = 'avif' | 'webp' | 'jpg';

/** One published copy of a picture. */
export interface PhotoCopy {
  /** `3f9c0a12b4d5e6f7-960.avif`: the digest of what it was made from, its width, its format. */
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
/** Raise it when copies are made another way: kept ones are then made anew. */
const MAKING = 1;

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
  const digest = createHash('sha256').update(`${MAKING}\0`).update(bytes).digest('hex').slice(0, 16);
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
 * The bytes of a copy, made once and then kept in `folder`, by default below `node_modules/.cache`. Turned upright, flattened on white; EXIF,
 * positions and every other block of metadata stay behind, and a drawing becomes pixels, so that nothing in it can run.
 */
export async function photoBytes(file: string, copy: PhotoCopy, folder: string = keptFolder()): Promise<Buffer> {
  const kept = join(folder, copy.name);
  try {
    return await readFile(kept);
  } catch {
    const bytes = await made(await readFile(file), copy);
    await mkdir(folder, { recursive: true });
    // Written beside it and renamed: a build that is stopped leaves no half of a picture.
    const unfinished = `${kept}.${process.pid}`;
    await writeFile(unfinished, bytes);
    await rename(unfinished, kept);
    return bytes;
  }
}

function keptFolder(): string {
  return join(projectRoot(), 'node_modules', '.cache', 'peg-atlas', 'photos');
}

function made(bytes: Buffer, { format, width }: PhotoCopy): Promise<Buffer> {
  const picture = open(bytes).autoOrient().resize({ width, withoutEnlargement: true }).flatten({ background: '#fff' });
  switch (format) {
    case 'avif':
      return picture.avif({ quality: 50, effort: 4 }).toBuffer();
    case 'webp':
      return picture.webp({ quality: 75 }).toBuffer();
    case 'jpg':
      return picture.jpeg({ quality: 78, mozjpeg: true }).toBuffer();
  }
}

function open(bytes: Buffer): Sharp {
  return sharp(bytes, { limitInputPixels: MOST_PIXELS, failOn: 'error' });
}
