import sharp from 'sharp';
import type { Fault } from './fault.ts';
import { faultOfFile } from './sources/source.ts';

/** A picture that unpacks to more pixels than this is an accident or an attack (its bytes alone do not tell). */
export const MAX_PIXELS = 100_000_000;

/**
 * What is wrong with a picture's bytes, or null: it is none, is cut short, or unpacks beyond measure. It is decoded to the end, at a
 * small size: a head that reads well says nothing of the rest.
 * @param path its place inside the venue folder
 */
export async function pictureFault(path: string, bytes: Uint8Array): Promise<Fault | null> {
  const fault = (rule: string, found: string, expected: string, mend: string) =>
    faultOfFile(path, { rule, found, expected, mend });
  const again = 'Open it in a picture program and save it again as JPEG or PNG, or put the original there.';
  if (bytes.length === 0) return fault('picture-empty', 'an empty file', 'a picture', again);
  try {
    const { autoOrient } = await sharp(bytes, { limitInputPixels: false }).metadata();
    const { width, height } = autoOrient;
    if (width * height > MAX_PIXELS) {
      return fault(
        'picture-size',
        `${width} × ${height} pixels`,
        `at most ${MAX_PIXELS / 1e6} million`,
        'Save it smaller.',
      );
    }
  } catch {
    return fault('picture-unreadable', 'a file that is no picture', 'a picture', again);
  }
  try {
    await sharp(bytes, { limitInputPixels: MAX_PIXELS, failOn: 'error' }).resize(16).raw().toBuffer();
    return null;
  } catch {
    return fault('picture-damaged', 'a picture that is damaged or cut short', 'a whole picture', again);
  }
}
