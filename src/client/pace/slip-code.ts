import { correction, generate } from 'lean-qr';

/** Bytes a code of version 25 holds at level L (ISO/IEC 18004, from memory): 117 modules, about as many as a camera reads from a phone's screen (our own choice). */
export const MAX_CODE_BYTES = 1273;

/** Modules of version 23: the decoder of the tests reads every version but this one, and so may others. */
const UNREAD_SIZE = 109;

/**
 * The text of a slip's file as the modules of one code (ISO/IEC 18004) for a screen, true where dark; null where it does not fit.
 * What is read from it is the file.
 */
export function slipCode(text: string): readonly (readonly boolean[])[] | null {
  // Readers disagree about letters beyond ASCII; inside a JSON text each can be written as an escape.
  const plain = text.replace(/[^ -~]/g, (unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`);
  if (plain.length > MAX_CODE_BYTES) return null;
  const level = { minCorrectionLevel: correction.L, maxCorrectionLevel: correction.L };
  const smallest = generate(plain, level);
  const code = smallest.size === UNREAD_SIZE ? generate(plain, { ...level, minVersion: 24 }) : smallest;
  const along = Array.from({ length: code.size }, (_, index) => index);
  return along.map((y) => along.map((x) => code.get(x, y)));
}
