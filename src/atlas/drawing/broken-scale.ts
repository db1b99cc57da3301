/** An even scale that changes its slope once, at `breakAt`, and says where that is in user units (null: it does not). */
export interface BrokenScale {
  place(distance: number): number;
  readonly breakAt: number | null;
}

/**
 * Maps distances from 0 to `end` onto user units. Up to `breakAfter` the scale is wide enough to tell close lines apart;
 * what lies beyond shares the last `farShare` of the width. No break where `end` does not lie clearly beyond it.
 */
export function brokenScale(end: number, breakAfter: number, farShare: number, from: number, to: number): BrokenScale {
  if (end <= breakAfter * 1.25) return { place: (distance) => from + ((to - from) * distance) / end, breakAt: null };
  const turn = to - (to - from) * farShare;
  const place = (distance: number) =>
    distance <= breakAfter
      ? from + ((turn - from) * distance) / breakAfter
      : turn + ((to - turn) * (distance - breakAfter)) / (end - breakAfter);
  return { place, breakAt: turn };
}
