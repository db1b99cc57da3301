import { correction, generate } from 'lean-qr';
import { squareCode } from './drawing/square-code.ts';

/** A quarter of the modules may be lost to mud and scratches (ISO/IEC 18004, level Q). */
const OUTDOORS = { minCorrectionLevel: correction.Q };

/** The code (ISO/IEC 18004) of an address, to be read by any phone's camera. */
export function pegCode(address: string, label: string): string {
  const code = generate(address, OUTDOORS);
  const along = Array.from({ length: code.size }, (_, index) => index);
  return squareCode(
    along.map((y) => along.map((x) => code.get(x, y))),
    label,
  );
}
