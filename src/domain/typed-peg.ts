/** A peg as it may be typed for: the name of its water and its number. */
export interface NamedPeg {
  readonly water: string;
  readonly peg: string;
}

/** Why what was typed fits no peg: the key of its message (`src/words/`), and what stands in its places. */
export interface TypedFault {
  readonly key: `typed.${'noPegHere' | 'noPegOn' | 'noPegOfName' | 'elsewhere' | 'noWater' | 'oneWater' | 'typeNumber'}`;
  readonly values: Readonly<Record<string, string>>;
}

/** What was typed, read as a peg: those that are meant, and what has to be said where it fits none exactly. */
export interface TypedPeg<T extends NamedPeg> {
  readonly pegs: readonly T[];
  /** Empty where what was typed fits. */
  readonly faults: readonly TypedFault[];
}

const NUMBER = /^\d{1,4}[a-z]?$/;

/**
 * Reads what an angler types for a peg: `23`, `014A`, `peg 23`, `K23`, `23 kiln`. Null where it is no peg's name but words
 * to search for. A number that no peg has, or not on the water named, is answered in words.
 */
export function readTypedPeg<T extends NamedPeg>(typed: string, pegs: readonly T[]): TypedPeg<T> | null {
  const text = plainPeg(typed.replace(/^\s*(?:peg|no\.?|#)\s*/i, ''));
  if (text === '') return { pegs: [], faults: [] };
  const exact = pegs.filter(({ peg }) => plainPeg(peg) === text);
  if (exact.length > 0) return { pegs: exact, faults: [] };

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
  if (words.length === 0) return { pegs: [], faults: [{ key: 'typed.noPegHere', values: { peg: number } }] };
  if (meant.length === 0) {
    // One letter before a number is somebody's name for a water; a whole word may be anything.
    if (words.some((word) => word.length > 1)) return null;
    return { pegs: ofNumber, faults: [{ key: 'typed.noWater', values: { name: words.join(' ').toUpperCase() } }] };
  }
  const found = ofNumber.filter(({ water }) => meant.includes(water));
  if (found.length > 0) return { pegs: found, faults: [] };
  const noSuch = meant.map((water): TypedFault => ({ key: 'typed.noPegOfName', values: { water, peg: number } }));
  const elsewhere: readonly TypedFault[] = ofNumber.length === 0 ? [] : [{ key: 'typed.elsewhere', values: {} }];
  return { pegs: ofNumber, faults: [...noSuch, ...elsewhere] };
}

/**
 * Reads what is typed for a peg on a page of one water, in the same ways: the peg, or why it is none of this page.
 * @param water the name of that water
 */
export function readPegOfWater(
  typed: string,
  water: string,
  pegs: readonly string[],
): { readonly peg: string; readonly fault: null } | { readonly peg: null; readonly fault: TypedFault } {
  const read = readTypedPeg(
    typed,
    pegs.map((peg) => ({ water, peg })),
  );
  const [found] = read?.faults.length === 0 ? read.pegs : [];
  if (found !== undefined) return { peg: found.peg, fault: null };
  if (typed.trim() === '') return { peg: null, fault: { key: 'typed.typeNumber', values: {} } };
  // A number with a name that is not this water's, or several numbers.
  const isOther = read === null ? /\d/.test(typed) : read.pegs.length > 0;
  return {
    peg: null,
    fault: isOther
      ? { key: 'typed.oneWater', values: { water } }
      : { key: 'typed.noPegOn', values: { peg: typed.trim().slice(0, 40), water } },
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
