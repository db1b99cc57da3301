import type { RoundFile } from '../../content/round-file/round-file.ts';

/** How a round left the phone: `shared` through another app, `saved` as a download, or `cancelled` by the person. */
export type HandedOver = 'shared' | 'saved' | 'cancelled';

/** The file of a round. Its ending is .txt since phones pass on text files and refuse others. */
export function roundAsFile(round: RoundFile): File {
  const name = `bank-round-${round.day}-${round.ref}.txt`;
  return new File([JSON.stringify(round)], name, { type: 'text/plain' });
}

/** Whether this phone can pass a file to another app. */
export function canShare(file: File): boolean {
  return typeof navigator.canShare === 'function' && navigator.canShare({ files: [file] });
}

/** Opens the phone's own share sheet with the file. */
export async function shareFile(file: File): Promise<HandedOver> {
  try {
    await navigator.share({ files: [file], title: file.name });
    return 'shared';
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') return 'cancelled';
    return downloadFile(file);
  }
}

/** Saves the file among the phone's downloads. */
export function downloadFile(file: File): HandedOver {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(file);
  link.download = file.name;
  document.body.append(link);
  link.click();
  link.remove();
  // Given up only later: some browsers begin the download after the click has returned.
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
  return 'saved';
}
