import type { ColumnPlaces } from './cross-pattern.ts';
import {
  addIntegers,
  get,
  integer,
  isAtMostUnsigned,
  isLessUnsigned,
  loadInteger,
  loadNumber,
  multiplyNumbers,
  repeatWhile,
  set,
  shiftLeft,
  storeNumber,
  subtractNumbers,
  vectorModule,
} from './vector-module.ts';

/** Lists of columns, ascending, with a value in each place, and where each column stands in them. */
export interface ScatteredLists {
  readonly listStart: Int32Array;
  readonly column: Int32Array;
  readonly value: Float64Array;
  /** One number a list. */
  readonly perList: Float64Array;
  readonly placesOf: ColumnPlaces;
}

/** The lists as they lie in the kernel's memory: until the next ones are laid out. */
export interface LaidLists {
  /** A row of the triangle, as wide as there are columns. */
  readonly row: Float64Array;
  /**
   * For every list that a column stands in, takes from the row what its own place of the list times all up to it is:
   * row[column of k] −= (number of the list × value at the place) × value at k.
   */
  readonly subtract: (column: number) => void;
}

export interface ScatterKernel {
  readonly layOut: (lists: ScatteredLists, columns: number) => LaidLists;
}

/**
 * Does what `assembleInPlace` spends most of its time on without asking at each number whether it lies inside its array, in the same
 * order as plain code, so that both give the same numbers to the last bit.
 *
 * @returns null where this machine or runtime refuses generated code
 */
export function scatterKernel(): ScatterKernel | null {
  try {
    const { exports } = new WebAssembly.Instance(new WebAssembly.Module(kernelModule()));
    const run = exports.run as (...given: number[]) => void;
    const memory = exports.memory as WebAssembly.Memory;
    return { layOut: (lists, columns) => laidOut(memory, run, lists, columns) };
  } catch {
    return null;
  }
}

const PAGE_BYTES = 65_536;

function laidOut(
  memory: WebAssembly.Memory,
  run: (...given: number[]) => void,
  { listStart, column, value, perList, placesOf }: ScatteredLists,
  columns: number,
): LaidLists {
  const { start, owner, place } = placesOf;
  // The row lies first, so that a column's place in it is its number times eight.
  const valuesAt = 8 * columns;
  const perListAt = valuesAt + 8 * value.length;
  const startsAt = perListAt + 8 * perList.length;
  const columnsAt = startsAt + 4 * listStart.length;
  const ownersAt = columnsAt + 4 * column.length;
  const placesAt = ownersAt + 4 * owner.length;
  const missing = placesAt + 4 * place.length - memory.buffer.byteLength;
  if (missing > 0) memory.grow(Math.ceil(missing / PAGE_BYTES));
  const { buffer } = memory;
  new Float64Array(buffer, valuesAt, value.length).set(value);
  new Float64Array(buffer, perListAt, perList.length).set(perList);
  new Int32Array(buffer, startsAt, listStart.length).set(listStart);
  new Int32Array(buffer, columnsAt, column.length).set(column);
  new Int32Array(buffer, ownersAt, owner.length).set(owner);
  new Int32Array(buffer, placesAt, place.length).set(place);
  return {
    row: new Float64Array(buffer, 0, columns),
    subtract: (of) => {
      const [from, to] = [start[of]!, start[of + 1]!];
      if (from < to) run(4 * from, 4 * to, ownersAt, placesAt, startsAt, perListAt, columnsAt, valuesAt);
    },
  };
}

function kernelModule(): Uint8Array<ArrayBuffer> {
  const [entry, entryEnd, owners, places, starts, perList, columns, values] = [0, 1, 2, 3, 4, 5, 6, 7];
  const [list, last, column, value, at] = [8, 9, 10, 11, 12];
  const scaled = 13;
  const sum = (a: number, b: number) => [...get(a), ...get(b), ...addIntegers];
  const times = (power: number) => [...integer(power), ...shiftLeft];
  const advance = (local: number, bytes: number) => [...get(local), ...integer(bytes), ...addIntegers, ...set(local)];
  const body = repeatWhile(
    [...sum(owners, entry), ...loadInteger, ...set(list)],
    // From here on where the value of the column's own place lies.
    [...sum(places, entry), ...loadInteger, ...times(3), ...get(values), ...addIntegers, ...set(last)],
    [...get(list), ...times(3), ...get(perList), ...addIntegers, ...loadNumber],
    [...get(last), ...loadNumber, ...multiplyNumbers, ...set(scaled)],
    [...get(list), ...times(2), ...get(starts), ...addIntegers, ...loadInteger, ...set(at)],
    [...get(at), ...times(2), ...get(columns), ...addIntegers, ...set(column)],
    [...get(at), ...times(3), ...get(values), ...addIntegers, ...set(value)],
    repeatWhile(
      [...get(column), ...loadInteger, ...times(3), ...set(at)],
      [...get(at), ...get(at), ...loadNumber],
      [...get(scaled), ...get(value), ...loadNumber, ...multiplyNumbers, ...subtractNumbers, ...storeNumber],
      advance(column, 4),
      advance(value, 8),
      [...get(value), ...get(last), ...isAtMostUnsigned],
    ),
    advance(entry, 4),
    [...get(entry), ...get(entryEnd), ...isLessUnsigned],
  );
  return vectorModule({ parameters: 8, integers: 5, numbers: 1, body: [body] }, 1);
}
