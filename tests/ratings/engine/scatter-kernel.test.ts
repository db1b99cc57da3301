import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainLists } from '../../../src/ratings/engine/assemble.ts';
import { columnPlaces } from '../../../src/ratings/engine/cross-pattern.ts';
import { type ScatteredLists, scatterKernel } from '../../../src/ratings/engine/scatter-kernel.ts';

/** Lists of columns, ascending, with numbers of many sizes, some of them zero. */
function exampleLists(columnsOf: readonly (readonly number[])[], columns: number, seed: number): ScatteredLists {
  const listStart = new Int32Array(columnsOf.length + 1);
  columnsOf.forEach((list, l) => {
    listStart[l + 1] = listStart[l]! + list.length;
  });
  const column = Int32Array.from(columnsOf.flat());
  const wave = (k: number) => (k % 13 === 0 ? 0 : Math.sin((k + 1) * (seed + 0.41)) * 10 ** ((k * seed) % 7));
  return {
    listStart,
    column,
    value: Float64Array.from(column, (_, k) => wave(k)),
    perList: Float64Array.from(columnsOf, (_, l) => wave(l + 3)),
    placesOf: columnPlaces(listStart, column, columns),
  };
}

const examples = fc.integer({ min: 1, max: 60 }).chain((columns) =>
  fc.record({
    columns: fc.constant(columns),
    seed: fc.integer({ min: 1, max: 500 }),
    lists: fc.array(fc.uniqueArray(fc.integer({ min: 0, max: columns - 1 }), { maxLength: columns }), {
      maxLength: 40,
    }),
  }),
);

/** Every row of the triangle as it is after all lists were taken off it, from a row of numbers to begin with. */
function rowsBy({ row, subtract }: ReturnType<typeof plainLists>, columns: number): Buffer[] {
  return Array.from({ length: columns }, (_, of) => {
    for (let c = 0; c < columns; c++) row[c] = Math.cos(c * 3 + of);
    subtract(of);
    return Buffer.from(row.slice().buffer);
  });
}

describe('the scatter kernel', () => {
  it('is there on the runtime that this project carries', () => {
    expect(scatterKernel()).not.toBeNull();
  });

  it('gives the numbers of plain code to the last bit, whatever was laid out before', () => {
    const kernel = scatterKernel()!;
    fc.assert(
      fc.property(examples, ({ columns, seed, lists }) => {
        const ascending = lists.map((list) => list.toSorted((a, b) => a - b));
        const given = exampleLists(ascending, columns, seed);
        expect(rowsBy(kernel.layOut(given, columns), columns)).toEqual(rowsBy(plainLists(given, columns), columns));
      }),
    );
  });

  it('takes as much memory as the lists need', () => {
    const columns = 900;
    const lists = Array.from({ length: 120 }, (_, l) =>
      Array.from({ length: columns }, (_, c) => c).filter((c) => c % 7 !== l % 7),
    );
    const given = exampleLists(lists, columns, 5);
    const rows = rowsBy(scatterKernel()!.layOut(given, columns), columns);
    expect(rows).toEqual(rowsBy(plainLists(given, columns), columns));
  });

  it('gives what the formula says', () => {
    const given: ScatteredLists = {
      listStart: Int32Array.of(0, 2, 4),
      column: Int32Array.of(0, 2, 1, 2),
      value: Float64Array.of(3, 5, 7, 11),
      perList: Float64Array.of(2, 1),
      placesOf: columnPlaces(Int32Array.of(0, 2, 4), Int32Array.of(0, 2, 1, 2), 3),
    };
    const { row, subtract } = scatterKernel()!.layOut(given, 3);
    row.fill(0);
    subtract(2);
    expect([...row]).toEqual([-2 * 5 * 3, -11 * 7, -2 * 5 * 5 - 11 * 11]);
    row.fill(0);
    subtract(0);
    expect([...row]).toEqual([-2 * 3 * 3, 0, 0]);
  });
});
