/** A peg as it may be typed for: the name of its water and its number. */
export interface NamedPeg {
  readonly water: string;
  readonly peg: string;
}

/** What was typed, read as a peg: those that are meant, and what has to be said where it fits none exactly. */
export interface TypedPeg<T extends NamedPeg> {
  readonly pegs: readonly T[];
  /** Empty where what was typed fits. */
  readonly said: string;
}

const NUMBER = /^\d{1,4}[a-z]?$/;

/**
 * Reads what an angler types for a peg: `23`, `014A`, `peg 23`, `K23`, `23 kiln`. Null where it is no peg's name but words
 * to search for. A number that no peg has, or not on the water named, is answered in words.
 */
export function readTypedPeg<T extends NamedPeg>(typed: string, pegs: readonly T[]): TypedPeg<T> | null {
  const text = plainPeg(typed.replace(/^\s*(?:peg|no\.?|#)\s*/i, ''));
  if (text === '') return { pegs: [], said: '' };
  const exact = pegs.filter(({ peg }) => plainPeg(peg) === text);
  if (exact.length > 0) return { pegs: exact, said: '' };

  const parts = text
    .split(/[\s,/]+/)
    .flatMap((part) => /^([a-z]{1,12})(\d{1,4}[a-z]?)$/.exec(part)?.slice(1) ?? [part]);
  const isNumber = (part: string) => NUMBER.test(part) || pegs.some(({ peg }) => plainPeg(peg) === plainPeg(part));
  const [number, ...more] = parts.filter(isNumber).map(plainPeg);
  const words = parts.filter((part) => !isNumber(part));
  if (number === undefined || more.length > 0) return null;

  const waters = [...new Set(pegs.map(({ water }) => water))];
  const meant = waters.filter((water) => words.every((word) => beginsIn(water, word)));
  const ofNumber = pegs.filter(({ peg }) => plainPeg(peg) === number);
  if (words.length === 0) return { pegs: [], said: `There is no peg ${number} here.` };
  if (meant.length === 0) {
    // One letter before a number is somebody's name for a water; a whole word may be anything.
    if (words.some((word) => word.length > 1)) return null;
    return { pegs: ofNumber, said: `No water here begins with ${words.join(' ').toUpperCase()}.` };
  }
  const found = ofNumber.filter(({ water }) => meant.includes(water));
  if (found.length > 0) return { pegs: found, said: '' };
  const where = ofNumber.length === 0 ? '' : ' Elsewhere there is:';
  return { pegs: ofNumber, said: `${meant.join(' and ')} has no peg ${number}.${where}` };
}

/**
 * Reads what is typed for a peg on a page of one water, in the same ways: the peg, or in words why it is none of this page.
 * @param water the name of that water
 */
export function readPegOfWater(
  typed: string,
  water: string,
  pegs: readonly string[],
): { readonly peg: string; readonly said: '' } | { readonly peg: null; readonly said: string } {
  const read = readTypedPeg(
    typed,
    pegs.map((peg) => ({ water, peg })),
  );
  const [found] = read?.said === '' ? read.pegs : [];
  if (found !== undefined) return { peg: found.peg, said: '' };
  if (typed.trim() === '') return { peg: null, said: 'Type the number on the post.' };
  // A number with a name that is not this water's, or several numbers.
  const isOther = read === null ? /\d/.test(typed) : read.pegs.length > 0;
  return {
    peg: null,
    said: isOther
      ? `This page is of ${water} alone, one number at a time: for another water start from “Which peg?”.`
      : `There is no peg ${typed.trim().slice(0, 40)} on ${water}.`,
  };
}

/** A peg's number as it is compared: capital letters and leading zeros make no difference. */
export function plainPeg(peg: string): string {
  return peg
    .trim()
    .toLowerCase()
    .replace(/^0+(?=.)/, '');
}

function beginsIn(water: string, word: string): boolean {
  return water
    .toLowerCase()
    .split(/[\s-]+/)
    .some((part) => part.startsWith(word));
}
