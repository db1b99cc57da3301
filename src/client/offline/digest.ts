/** How many hexadecimal digits of a SHA-256 stand for a file: 64 bits, far beyond any chance of two files alike. */
const DIGITS = 16;

/** The first digits of the SHA-256 (FIPS 180-4) of a file or a text in UTF-8, as the offline list states them. */
export async function shortDigest(content: Uint8Array | string): Promise<string> {
  const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content;
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes as BufferSource));
  return [...digest.subarray(0, DIGITS / 2)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
