import {
  addIntegers,
  addPairs,
  get,
  integer,
  isLessUnsigned,
  loadPair,
  loadTwice,
  multiplyPairs,
  repeatWhile,
  set,
  storePair,
  vectorModule,
  zeroPair,
} from './vector-module.ts';

/** Widest strip of columns and deepest sum that the kernel's memory holds. */
export const STRIP = 64;
export const DEPTH = 256;

const PAGE_BYTES = 65_536;
/** Where in memory the columns lie (four by four, one depth after another), the four rows, and the sums: counted in numbers. */
const COLUMNS_AT = 0;
const ROWS_AT = STRIP * DEPTH;
const SUMS_AT = ROWS_AT + 4 * DEPTH;
const NUMBERS = SUMS_AT + 4 * STRIP;

/**
 * Sums of products of four rows with a strip of columns, two columns at a time in the processor's vector registers. The numbers of
 * four rows (or columns) lie beside each other, one depth after another; the sums of a tile of 4 × 4 lie by rows.
 */
export interface ProductKernel {
  readonly memory: Float64Array;
  readonly columnsAt: number;
  readonly rowsAt: number;
  readonly sumsAt: number;
  /**
   * Sums over `depth` (even) for `columns` (a multiple of 4) columns, into the place of the sums.
   * @param laid how deep the columns are laid out, at least `depth`
   * @param from where in that depth the sums begin
   */
  readonly run: (depth: number, columns: number, laid: number, from: number) => void;
}

/**
 * Every sum is made in the same order as in plain code, a product and then an addition without fused rounding, so that a machine
 * with vectors and one without give the same numbers to the last bit.
 *
 * @returns null where this machine or runtime has no vectors, or refuses generated code
 */
export function productKernel(): ProductKernel | null {
  try {
    const { exports } = new WebAssembly.Instance(new WebAssembly.Module(kernelModule()));
    const run = exports.run as (
      rows: number,
      rowsEnd: number,
      columns: number,
      columnsEnd: number,
      sums: number,
      skip: number,
    ) => void;
    const memory = new Float64Array((exports.memory as WebAssembly.Memory).buffer);
    return {
      memory,
      columnsAt: COLUMNS_AT,
      rowsAt: ROWS_AT,
      sumsAt: SUMS_AT,
      run: (depth, columns, laid, from) => {
        const at = COLUMNS_AT + 4 * from;
        const skip = 4 * (laid - depth);
        run(8 * ROWS_AT, 8 * (ROWS_AT + 4 * depth), 8 * at, 8 * (at + columns * laid), 8 * SUMS_AT, 8 * skip);
      },
    };
  } catch {
    return null;
  }
}

function kernelModule(): Uint8Array<ArrayBuffer> {
  const [rows, rowsEnd, columns, columnsEnd, sums, skip, row] = [0, 1, 2, 3, 4, 5, 6];
  const pair = (index: number) => 7 + index;
  const [left, right, own] = [pair(8), pair(9), pair(10)];
  const eight = Array.from({ length: 8 }, (_, i) => i);
  const four = [0, 1, 2, 3];
  const advance = (local: number, bytes: number) => [...get(local), ...integer(bytes), ...addIntegers, ...set(local)];
  const atDepth = (depth: number) => [
    ...[...get(columns), ...loadPair(32 * depth), ...set(left)],
    ...[...get(columns), ...loadPair(32 * depth + 16), ...set(right)],
    ...four.flatMap((r) => [
      ...[...get(row), ...loadTwice(32 * depth + 8 * r), ...set(own)],
      ...[...get(pair(2 * r)), ...get(own), ...get(left), ...multiplyPairs, ...addPairs, ...set(pair(2 * r))],
      ...[...get(pair(2 * r + 1)), ...get(own), ...get(right), ...multiplyPairs, ...addPairs, ...set(pair(2 * r + 1))],
    ]),
  ];
  const body = repeatWhile(
    eight.flatMap((i) => [...zeroPair, ...set(pair(i))]),
    [...get(rows), ...set(row)],
    repeatWhile(atDepth(0), atDepth(1), advance(columns, 64), advance(row, 64), [
      ...get(row),
      ...get(rowsEnd),
      ...isLessUnsigned,
    ]),
    eight.flatMap((i) => [...get(sums), ...get(pair(i)), ...storePair(16 * i)]),
    advance(sums, 128),
    [...get(columns), ...get(skip), ...addIntegers, ...set(columns)],
    [...get(columns), ...get(columnsEnd), ...isLessUnsigned],
  );
  return vectorModule({ parameters: 7, pairs: 11, body: [body] }, Math.ceil((8 * NUMBERS) / PAGE_BYTES));
}
