import type { Slip } from '../../match-day/slip.ts';
import { readSlipFile } from '../../match-day/slip-file.ts';
import { make } from '../make.ts';
import { canShare, downloadFile, shareFile } from '../round/hand-over.ts';

/** Reads codes in pictures, where a browser can (the Shape Detection API, of which TypeScript knows nothing). */
interface CodeReader {
  detect(picture: ImageBitmap): Promise<readonly { readonly rawValue: string }[]>;
}
type CodeReaderClass = new (options: { readonly formats: readonly string[] }) => CodeReader;

/** A photograph of the code on an angler's screen becomes the slip's file; nothing of it is kept on this phone. */
export function slipReaderView(venue: string): HTMLElement {
  const said = make('p', { role: 'status', id: 'slip-read' });
  const { BarcodeDetector } = globalThis as { readonly BarcodeDetector?: CodeReaderClass };
  if (BarcodeDetector === undefined) {
    said.textContent = 'An angler hands over a slip? This browser reads no code from a screen: ask for the file.';
    return said;
  }
  const input = make('input', { type: 'file', accept: 'image/*', className: 'unseen' });
  input.setAttribute('capture', 'environment');
  input.addEventListener('change', () => {
    const [picture] = input.files ?? [];
    if (picture !== undefined) {
      void readWords(new BarcodeDetector({ formats: ['qr_code'] }), picture, venue).then((words) => {
        said.textContent = words;
      });
    }
    input.value = '';
  });
  return make(
    'div',
    {},
    make('label', { className: 'wide-button' }, 'Photograph the code of an angler’s slip', input),
    make('p', { className: 'soft' }, 'It becomes the slip’s file, for the secretary to take in after the match.'),
    said,
  );
}

async function readWords(reader: CodeReader, picture: File, venue: string): Promise<string> {
  const text = await codeIn(reader, picture);
  if (text === null) return 'No code was found: fill the picture with it, hold still, or ask for the file.';
  const read = await readSlipFile(text);
  if (!read.ok) return read.why;
  if (read.slip.venue !== venue) return `That slip is of ${read.slip.venue}, not of this venue.`;
  const file = slipAsFile(text, read.slip);
  const how = canShare(file) ? await shareFile(file) : downloadFile(file);
  return how === 'cancelled' ? 'The slip was read, and not handed on.' : `${file.name} was ${how}.`;
}

/** The text of the first code in a picture; null where there is none, or no picture. */
async function codeIn(reader: CodeReader, picture: File): Promise<string | null> {
  try {
    const [code] = await reader.detect(await createImageBitmap(picture));
    return code?.rawValue ?? null;
  } catch {
    return null;
  }
}

function slipAsFile(text: string, { water, peg, day }: Slip): File {
  return new File([text], `slip-${water}-${peg}-${day}.txt`, { type: 'text/plain' });
}
