/** Letters and digits that cannot be taken for one another when read out. */
const CHARACTERS = 'abcdefghjkmnpqrstuvwxyz23456789';

/** A new reference that nobody else has, opaque and short enough to be read out: of a round, a phone, an entry, a slip. */
export function newReference(length = 6): string {
  const random = crypto.getRandomValues(new Uint8Array(length));
  return Array.from(random, (byte) => CHARACTERS[byte % CHARACTERS.length]).join('');
}
