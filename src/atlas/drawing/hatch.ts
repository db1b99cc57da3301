import { stroke } from './svg-markup.ts';

/** A rectangle in user units. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/**
 * Strokes slanting through a box, cut at its edges, as one path: a fill that survives a black-and-white printer and
 * needs no pattern with an id, so many drawings can share a page. Strokes lie `spacing` apart along the level axis.
 */
export function hatch(box: Box, spacing: number, direction: 'rising' | 'falling' = 'rising'): string {
  if (box.width <= 0 || box.height <= 0) return '';
  const strokes: string[] = [];
  // Stroke number k runs from (x + k, bottom) up to (x + k + height, top), before it is cut.
  const first = Math.ceil(-box.height / spacing) * spacing;
  for (let start = first; start < box.width; start += spacing) {
    const from = Math.max(start, 0);
    const to = Math.min(start + box.height, box.width);
    if (to - from < 0.5) continue;
    const rises = (along: number) =>
      direction === 'rising' ? box.y + box.height - (along - start) : box.y + (along - start);
    strokes.push(stroke(box.x + from, rises(from), box.x + to, rises(to)));
  }
  return strokes.join('');
}

/** Level strokes through a box, `spacing` apart. */
export function levelStrokes(box: Box, spacing: number): string {
  const count = Math.max(0, Math.ceil(box.height / spacing) - 1);
  return Array.from({ length: count }, (_, index) => {
    const y = box.y + (index + 1) * spacing;
    return stroke(box.x, y, box.x + box.width, y);
  }).join('');
}
