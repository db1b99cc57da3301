/**
 * Writes a WebAssembly module of one function that works on one memory, in the binary format of the WebAssembly Core
 * Specification 2.0 (W3C, 2022, chapter 5): `magic version type function memory export code`. Only what the kernels
 * need of the instruction set stands here, each by its name in the specification.
 */

type Code = readonly number[];

const I32 = 0x7f;
const F64 = 0x7c;
const V128 = 0x7b;
const NO_RESULT = 0x40;

/** LEB128, unsigned (section 5.2.2). */
export function unsigned(value: number): Code {
  const bytes: number[] = [];
  let rest = value;
  do {
    const low = rest & 0x7f;
    rest >>>= 7;
    bytes.push(rest === 0 ? low : low | 0x80);
  } while (rest !== 0);
  return bytes;
}

/** LEB128, signed. */
export function signed(value: number): Code {
  const bytes: number[] = [];
  let rest = value;
  for (;;) {
    const low = rest & 0x7f;
    rest >>= 7;
    const isLast = (rest === 0 && (low & 0x40) === 0) || (rest === -1 && (low & 0x40) !== 0);
    bytes.push(isLast ? low : low | 0x80);
    if (isLast) return bytes;
  }
}

/** A vector instruction: the prefix of all of them, and its number. */
const vector = (number: number, ...rest: number[]): Code => [0xfd, ...unsigned(number), ...rest];
/** Alignment as a power of two, and an offset in bytes. */
const place = (alignment: number, offset: number): number[] => [...unsigned(alignment), ...unsigned(offset)];

export const get = (local: number): Code => [0x20, ...unsigned(local)];
export const set = (local: number): Code => [0x21, ...unsigned(local)];
export const integer = (value: number): Code => [0x41, ...signed(value)];
export const addIntegers: Code = [0x6a];
export const isLessUnsigned: Code = [0x49];
export const isAtMostUnsigned: Code = [0x4d];
export const shiftLeft: Code = [0x74];
export const loadInteger: Code = [0x28, 0x02, 0x00];
export const loadNumber: Code = [0x2b, 0x03, 0x00];
export const storeNumber: Code = [0x39, 0x03, 0x00];
export const subtractNumbers: Code = [0xa1];
export const multiplyNumbers: Code = [0xa2];
/** Does the body, and again for as long as it leaves a number other than 0. */
export const repeatWhile = (...body: Code[]): Code => [0x03, NO_RESULT, ...body.flat(), 0x0d, 0x00, 0x0b];
export const loadPair = (offset: number): Code => vector(0, ...place(3, offset));
/** One number, in both places of a pair. */
export const loadTwice = (offset: number): Code => vector(10, ...place(3, offset));
export const storePair = (offset: number): Code => vector(11, ...place(3, offset));
export const zeroPair: Code = vector(12, ...new Array<number>(16).fill(0));
export const addPairs: Code = vector(0xf0);
export const multiplyPairs: Code = vector(0xf2);

const counted = (items: readonly Code[]): Code => [...unsigned(items.length), ...items.flat()];
const sized = (bytes: Code): Code => [...unsigned(bytes.length), ...bytes];
const section = (number: number, items: readonly Code[]): Code => [number, ...sized(counted(items))];
const named = (name: string, kind: number, index: number): Code => {
  const bytes = [...new TextEncoder().encode(name)];
  return [...sized(bytes), kind, ...unsigned(index)];
};

/** A function without a result: how many integers it is given, what else it works with, in this order, and what it does. */
export interface VectorFunction {
  readonly parameters: number;
  readonly integers?: number;
  readonly numbers?: number;
  readonly pairs?: number;
  readonly body: readonly Code[];
}

/** The module's bytes; it exports `run` and `memory`, of so many pages of 64 KB, or more where it is told to grow. */
export function vectorModule(
  { parameters, integers = 0, numbers = 0, pairs = 0, body }: VectorFunction,
  pages: number,
): Uint8Array<ArrayBuffer> {
  const type = [0x60, ...counted(Array.from({ length: parameters }, () => [I32])), 0x00];
  const locals = counted([
    [...unsigned(integers), I32],
    [...unsigned(numbers), F64],
    [...unsigned(pairs), V128],
  ]);
  return Uint8Array.from([
    ...[0x00, 0x61, 0x73, 0x6d, 0x01, 0x00, 0x00, 0x00],
    ...section(1, [type]),
    ...section(3, [[0x00]]),
    ...section(5, [[0x00, ...unsigned(pages)]]),
    ...section(7, [named('run', 0, 0), named('memory', 2, 0)]),
    ...section(10, [sized([...locals, ...body.flat(), 0x0b])]),
  ]);
}
