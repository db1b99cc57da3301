const LONGEST_SIDE_PIXELS = 1600;
const JPEG_QUALITY = 0.8;

/**
 * Makes a photo small by drawing it anew: upright, at most 1,600 pixels a side, and without the place, time and device the
 * camera wrote into it, since a drawing has none.
 * @returns null where the file is no picture
 */
export async function shrinkPhoto(file: Blob): Promise<ArrayBuffer | null> {
  let bitmap: ImageBitmap;
  try {
    bitmap = await createImageBitmap(file, { imageOrientation: 'from-image' });
  } catch {
    return null;
  }
  const scale = Math.min(1, LONGEST_SIDE_PIXELS / Math.max(bitmap.width, bitmap.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(bitmap.width * scale));
  canvas.height = Math.max(1, Math.round(bitmap.height * scale));
  canvas.getContext('2d')?.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
  bitmap.close();
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/jpeg', JPEG_QUALITY));
  return blob === null ? null : blob.arrayBuffer();
}
