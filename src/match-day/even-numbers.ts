/** Whole numbers from 0 up to, not including, `below`, each as likely as any other. */
export type NextBelow = (below: number) => Promise<number>;

const WORDS = 2 ** 32;

/**
 * Numbers that anybody can work out again from a text: the 32-bit words, big end first, of SHA-256 (FIPS 180-4) of the text, a
 * line feed and 0, then 1, and so on. A word that would favour small numbers is passed over (rejection sampling; Knuth, The
 * Art of Computer Programming 2, 3.4.1), so that no number is likelier than another by even one in four thousand million.
 */
export function numbersFrom(text: string): NextBelow {
  let block = new DataView(new ArrayBuffer(0));
  let at = 0;
  let counter = 0;
  const nextWord = async () => {
    if (at === block.byteLength) {
      block = new DataView(await sha256(`${text}\n${counter++}`));
      at = 0;
    }
    at += 4;
    return block.getUint32(at - 4);
  };
  return async (below) => {
    if (!Number.isInteger(below) || below < 1 || below > WORDS) {
      throw new RangeError(`numbersFrom: expected a whole number from 1 to 2^32, found ${below}`);
    }
    const fair = WORDS - (WORDS % below);
    let word = await nextWord();
    while (word >= fair) word = await nextWord();
    return word % below;
  };
}

/** SHA-256 of a text in UTF-8. */
function sha256(text: string): Promise<ArrayBuffer> {
  return crypto.subtle.digest('SHA-256', new TextEncoder().encode(text));
}

/** The same as 64 hexadecimal digits, as any tool prints it. */
export async function sha256Hex(text: string): Promise<string> {
  return [...new Uint8Array(await sha256(text))].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
