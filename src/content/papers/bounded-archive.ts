import { unzipSync, zipSync } from 'fflate';

/** What a workbook may unpack to. A sheet of a club is far below; a file made to exhaust a machine is far above. */
const MAX_UNPACKED_BYTES = 100 * 1024 * 1024;
const MAX_ENTRIES = 2000;

/** Whether the bytes begin like a ZIP archive, which XLSX and ODS are (APPNOTE.TXT 4.3.7). */
export function isArchive(bytes: Uint8Array): boolean {
  return bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 0x03 && bytes[3] === 0x04;
}

/**
 * The same archive with its entries stored as they are, unpacked within bounds: what reads it next cannot be made to
 * unpack more. Each entry is unpacked into a buffer of the size it states, so one that lies about its size is cut off.
 * @returns null where it states more than the bound, or is no whole archive
 */
export function boundedArchive(bytes: Uint8Array): Uint8Array | null {
  let total = 0;
  let entries = 0;
  try {
    const files = unzipSync(bytes, {
      filter: ({ originalSize }) => {
        total += originalSize;
        entries += 1;
        if (total > MAX_UNPACKED_BYTES || entries > MAX_ENTRIES) throw new RangeError('archive too large');
        return true;
      },
    });
    return zipSync(files, { level: 0 });
  } catch {
    return null;
  }
}
