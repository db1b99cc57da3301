import sharp from 'sharp';

const LONGEST_SIDE_PIXELS = 2400;
/** A decompression bomb is refused before it is unpacked: 50 megapixels is more than a phone's camera gives. */
const MAX_PIXELS = 50_000_000;

/**
 * Decodes a picture and encodes it again as JPEG: upright, no larger than needed, and without the place, time and device
 * that a camera writes into its files.
 * @returns null where the bytes are no JPEG picture
 */
export async function cleanPhoto(base64: string): Promise<Uint8Array | null> {
  try {
    const picture = sharp(Buffer.from(base64, 'base64'), { limitInputPixels: MAX_PIXELS });
    if ((await picture.metadata()).format !== 'jpeg') return null;
    return await picture
      .rotate()
      .resize({ width: LONGEST_SIDE_PIXELS, height: LONGEST_SIDE_PIXELS, fit: 'inside', withoutEnlargement: true })
      .jpeg({ quality: 82, mozjpeg: true })
      .toBuffer();
  } catch {
    return null;
  }
}
