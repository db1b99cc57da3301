import type { GuideChanges, TextChange } from './file-changes.ts';

/**
 * Changes as they lie on a host. Steps of one kind stand together, numbers as one or two letters: what compresses pages
 * finds far more that repeats in a row of one kind than in steps that follow each other, and takes a third fewer bytes.
 */
interface PackedChanges {
  readonly from: string;
  readonly to: string;
  /** By address, how many steps of the rows below are that file's. */
  readonly files: Readonly<Record<string, number>>;
  /** A step's tokens kept before it. */
  readonly kept: string;
  /** What a step adds to a number, signs folded in; 0 where a text is put in instead. */
  readonly added: string;
  /** For each text put in, how many tokens are left out. */
  readonly leftOut: string;
  readonly put: readonly string[];
}

/** Letters that JSON writes as they are: "#" to "~" without the backslash. The last sixteen say that another follows. */
const FIRST_LETTER = 35;
const BACKSLASH = 92;
const LAST_LETTERS = 75;
const MORE_LETTERS = 16;

/** Changes in the form in which they lie on a host, for `JSON.stringify`. */
export function packChanges({ from, to, files }: GuideChanges): PackedChanges {
  const steps = Object.values(files).flatMap((change) =>
    change.flatMap((kept, i) => (i % 2 === 0 ? [{ kept: Number(kept), step: change[i + 1]! }] : [])),
  );
  const puts = steps.flatMap(({ step }) => (typeof step === 'number' ? [] : [step]));
  return {
    from,
    to,
    files: Object.fromEntries(Object.entries(files).map(([path, change]) => [path, change.length / 2])),
    kept: steps.map(({ kept }) => lettersOf(kept)).join(''),
    added: steps.map(({ step }) => lettersOf(typeof step === 'number' ? folded(step) : 0)).join(''),
    leftOut: puts.map(([leftOut]) => lettersOf(leftOut)).join(''),
    put: puts.map(([, text]) => text),
  };
}

/** Takes changes out of that form; null for anything else. */
export function unpackChanges(packed: unknown): GuideChanges | null {
  if (!isPacked(packed)) return null;
  const { from, to, files, put } = packed;
  const [kept, added, leftOut] = [packed.kept, packed.added, packed.leftOut].map(numbersOf);
  if (kept === undefined || kept.length !== added?.length || put.length !== leftOut?.length) return null;
  if (kept.length !== Object.values(files).reduce((sum, steps) => sum + steps, 0)) return null;
  if (added.filter((units) => units === 0).length !== put.length) return null;
  let step = 0;
  let text = 0;
  const changes: [string, TextChange][] = [];
  for (const [path, steps] of Object.entries(files)) {
    const change: (number | readonly [number, string])[] = [];
    for (const end = step + steps; step < end; step++) {
      const units = added[step]!;
      change.push(kept[step]!, units === 0 ? [leftOut[text]!, put[text++]!] : unfolded(units));
    }
    changes.push([path, change]);
  }
  return { from, to, files: Object.fromEntries(changes) };
}

function isPacked(packed: unknown): packed is PackedChanges {
  if (typeof packed !== 'object' || packed === null) return false;
  const { files, put, from, to, kept, added, leftOut } = packed as Partial<PackedChanges>;
  return (
    [from, to, kept, added, leftOut].every((text) => typeof text === 'string') &&
    typeof files === 'object' &&
    files !== null &&
    Object.values(files).every((steps) => Number.isInteger(steps) && steps >= 0) &&
    Array.isArray(put) &&
    put.every((text) => typeof text === 'string')
  );
}

/** 1, −1, 2, −2 … as 1, 2, 3, 4 … */
function folded(units: number): number {
  return units > 0 ? 2 * units - 1 : -2 * units;
}

function unfolded(number: number): number {
  return number % 2 === 1 ? (number + 1) / 2 : -number / 2;
}

/** A whole number, 0 or more, as letters: one below 75, two below 1,275. */
function lettersOf(number: number): string {
  let letters = '';
  let rest = number;
  for (; rest >= LAST_LETTERS; rest = Math.floor((rest - LAST_LETTERS) / MORE_LETTERS))
    letters += letter(LAST_LETTERS + ((rest - LAST_LETTERS) % MORE_LETTERS));
  return letters + letter(rest);
}

function letter(value: number): string {
  const code = FIRST_LETTER + value;
  return String.fromCharCode(code < BACKSLASH ? code : code + 1);
}

/** The numbers that a row of letters stands for; what is no such letter makes numbers that no list's digest agrees to. */
function numbersOf(letters: string): readonly number[] {
  const numbers: number[] = [];
  let before: number[] = [];
  for (let i = 0; i < letters.length; i++) {
    const code = letters.charCodeAt(i);
    const value = code - FIRST_LETTER - (code > BACKSLASH ? 1 : 0);
    if (value >= LAST_LETTERS) {
      before.push(value - LAST_LETTERS);
      continue;
    }
    numbers.push(before.reduceRight((rest, more) => rest * MORE_LETTERS + more + LAST_LETTERS, value));
    before = [];
  }
  return numbers;
}
