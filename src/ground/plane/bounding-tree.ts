/** A tree of boxes over numbered items: each node's box holds all of its items' boxes. */
export interface BoundingTree {
  /** Four numbers a node: least x, least y, greatest x, greatest y. Node 0 is the root. */
  readonly boxes: Float64Array;
  /** The first of a node's two children, which lie side by side; 0 for a leaf. */
  readonly firstChild: Int32Array;
  /** Where a leaf's items begin in `items`, and how many they are. */
  readonly start: Int32Array;
  readonly count: Int32Array;
  readonly items: Int32Array;
}

const LEAF_ITEMS = 6;

/**
 * Builds the tree by halving the items at the middle one along the longer side of their box, down to leaves of six. It
 * fits itself to items that crowd along a bank and leave the middle of a water empty. `itemBoxes` holds four numbers an item.
 */
export function boundingTree(itemBoxes: Float64Array): BoundingTree {
  const size = itemBoxes.length / 4;
  const items = Int32Array.from({ length: size }, (_, i) => i);
  const nodes = Math.max(1, 2 * Math.ceil(size / Math.ceil(LEAF_ITEMS / 2)) + 1);
  const boxes = new Float64Array(4 * nodes);
  const firstChild = new Int32Array(nodes);
  const start = new Int32Array(nodes);
  const count = new Int32Array(nodes);
  let used = 1;

  const fill = (node: number, from: number, to: number) => {
    const [minX, minY, maxX, maxY] = boxAround(itemBoxes, items.subarray(from, to));
    boxes.set([minX, minY, maxX, maxY], 4 * node);
    if (to - from <= LEAF_ITEMS) {
      start[node] = from;
      count[node] = to - from;
      return;
    }
    const axis = maxX - minX >= maxY - minY ? 0 : 1;
    const middleOf = (item: number) => itemBoxes[4 * item + axis]! + itemBoxes[4 * item + axis + 2]!;
    // Ties are ordered by number, so that the same items always make the same tree.
    items.subarray(from, to).sort((a, b) => middleOf(a) - middleOf(b) || a - b);
    const middle = (from + to) >> 1;
    const child = used;
    used += 2;
    firstChild[node] = child;
    fill(child, from, middle);
    fill(child + 1, middle, to);
  };
  fill(0, 0, size);
  return { boxes, firstChild, start, count, items };
}

function boxAround(itemBoxes: Float64Array, items: Int32Array): readonly [number, number, number, number] {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const item of items) {
    minX = Math.min(minX, itemBoxes[4 * item]!);
    minY = Math.min(minY, itemBoxes[4 * item + 1]!);
    maxX = Math.max(maxX, itemBoxes[4 * item + 2]!);
    maxY = Math.max(maxY, itemBoxes[4 * item + 3]!);
  }
  return [minX, minY, maxX, maxY];
}
