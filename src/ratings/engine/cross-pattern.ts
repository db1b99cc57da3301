import type { SparseRows } from './latent-model.ts';

/** Rows sorted by level of the eliminated term; the rows without one are last, in group `levels`. */
export interface LevelGroups {
  readonly groupStart: Int32Array;
  readonly groupRows: Int32Array;
}

/** Which columns meet each level: a list a level, ascending, and for each entry its place in its level's list (−1 without one). */
export interface CrossPattern {
  readonly crossStart: Int32Array;
  readonly crossColumn: Int32Array;
  readonly entryPlace: Int32Array;
}

export function levelGroups(level: Int32Array, levels: number): LevelGroups {
  const groupStart = new Int32Array(levels + 2);
  for (const l of level) groupStart[(l < 0 ? levels : l) + 1]!++;
  for (let g = 0; g <= levels; g++) groupStart[g + 1] = groupStart[g + 1]! + groupStart[g]!;
  const next = groupStart.slice();
  const groupRows = new Int32Array(level.length);
  level.forEach((l, i) => {
    groupRows[next[l < 0 ? levels : l]!++] = i;
  });
  return { groupStart, groupRows };
}

export function crossPattern(
  { groupStart, groupRows }: LevelGroups,
  levels: number,
  { rowStart, column }: SparseRows,
  columns: number,
): CrossPattern {
  const crossStart = new Int32Array(levels + 1);
  // No level meets more columns than there are, nor more than its rows have entries.
  const room = new Int32Array(Math.min(column.length, levels * columns));
  const entryPlace = new Int32Array(column.length).fill(-1);
  const place = new Int32Array(columns).fill(-1);
  let next = 0;
  for (let l = 0; l < levels; l++) {
    const first = next;
    for (let r = groupStart[l]!; r < groupStart[l + 1]!; r++) {
      const row = groupRows[r]!;
      for (let k = rowStart[row]!; k < rowStart[row + 1]!; k++) {
        const met = column[k]!;
        if (place[met]! >= first) continue;
        place[met] = first;
        room[next++] = met;
      }
    }
    room.subarray(first, next).sort();
    for (let at = first; at < next; at++) place[room[at]!] = at;
    for (let r = groupStart[l]!; r < groupStart[l + 1]!; r++) {
      const row = groupRows[r]!;
      for (let k = rowStart[row]!; k < rowStart[row + 1]!; k++) entryPlace[k] = place[column[k]!]!;
    }
    crossStart[l + 1] = next;
  }
  return { crossStart, crossColumn: room.slice(0, next), entryPlace };
}

/** For each column, where it stands in lists of columns by row (or level), and in whose: ascending by owner. */
export interface ColumnPlaces {
  readonly start: Int32Array;
  readonly owner: Int32Array;
  readonly place: Int32Array;
}

/**
 * @param listStart Where each owner's list begins in `column`, and where the last one ends.
 * @param isWanted Whether an owner's list counts.
 */
export function columnPlaces(
  listStart: Int32Array,
  column: Int32Array,
  columns: number,
  isWanted: (owner: number) => boolean = () => true,
): ColumnPlaces {
  const owners = Int32Array.from({ length: listStart.length - 1 }, (_, o) => o).filter(isWanted);
  const start = new Int32Array(columns + 1);
  for (const o of owners) {
    for (let k = listStart[o]!; k < listStart[o + 1]!; k++) start[column[k]! + 1]!++;
  }
  for (let c = 0; c < columns; c++) start[c + 1] = start[c + 1]! + start[c]!;
  const next = start.slice();
  const owner = new Int32Array(start[columns]!);
  const place = new Int32Array(start[columns]!);
  for (const o of owners) {
    for (let k = listStart[o]!; k < listStart[o + 1]!; k++) {
      const at = next[column[k]!]!++;
      owner[at] = o;
      place[at] = k;
    }
  }
  return { start, owner, place };
}
