import type { Point } from './simplify-line.ts';

/**
 * The parts of a line that may show in a drawing of a size: a stretch is left out only where both its ends lie beyond the same edge.
 * Nothing that shows is lost, and a line that runs on for a kilometre costs a small drawing no bytes.
 */
export function partsInSight(
  line: readonly Point[],
  width: number,
  height: number,
  margin: number,
): readonly (readonly Point[])[] {
  const parts: Point[][] = [];
  let isGoingOn = false;
  for (const [i, end] of line.entries()) {
    const start = line[i - 1];
    if (start === undefined) continue;
    const isBeyond =
      Math.max(start[0], end[0]) < -margin ||
      Math.max(start[1], end[1]) < -margin ||
      Math.min(start[0], end[0]) > width + margin ||
      Math.min(start[1], end[1]) > height + margin;
    if (!isBeyond && isGoingOn) parts.at(-1)!.push(end);
    else if (!isBeyond) parts.push([start, end]);
    isGoingOn = !isBeyond;
  }
  return parts;
}
