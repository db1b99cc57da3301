/** A peg's number as it is painted: 23, 14a. */
const NUMBER = /^[1-9][0-9]{0,3}[a-z]?$/;
const MOST = 600;

/**
 * Reads how a person says which pegs a water has: `24` for 1 to 24, `1-20, 22, 24a`.
 * @returns the numbers in the order they were said, or null where it cannot be read or says a number twice
 */
export function pegNumbers(said: string): readonly string[] | null {
  const parts = said
    .toLowerCase()
    .split(/[,;\s]+(?:and\s+)?/)
    .filter((part) => part !== '');
  const [only] = parts;
  const numbers =
    parts.length === 1 && /^[0-9]{1,3}$/.test(only!) && Number(only) > 0
      ? run(1, Number(only))
      : parts.flatMap(partNumbers);
  const isWhole = numbers.length > 0 && numbers.length <= MOST && numbers.every((number) => NUMBER.test(number));
  return isWhole && new Set(numbers).size === numbers.length ? numbers : null;
}

function partNumbers(part: string): readonly string[] {
  const [, first, last] = /^([0-9]{1,4})(?:-|–|\.\.|to)([0-9]{1,4})$/.exec(part) ?? [];
  if (first === undefined || last === undefined) return [part.replace(/^0+(?=[0-9])/, '')];
  // A run that goes down, or is longer than any water, is a slip: it reads as none.
  return Number(first) > Number(last) || Number(last) - Number(first) >= MOST ? [''] : run(Number(first), Number(last));
}

function run(first: number, last: number): readonly string[] {
  return Array.from({ length: last - first + 1 }, (_, index) => String(first + index));
}
