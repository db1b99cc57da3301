/** A point of the map's window, in pixels from its upper left corner. */
export type Pixel = readonly [x: number, y: number];

/** A contour whose depth is to be written on it. */
export interface ContourLine {
  /** Where its figure belongs while that is in sight. */
  readonly home: Pixel;
  readonly lines: readonly (readonly Pixel[])[];
}

/** How far inside the window a figure stays, and how far from the next. */
const EDGE = 16;
const APART = 30;

/**
 * Where the figures of contours stand in a window of a size: each at home, or, where home is out of sight, at the place of its
 * contour nearest to the middle. One that would stand on another keeps its home.
 */
export function figurePlaces(contours: readonly ContourLine[], [width, height]: Pixel): readonly Pixel[] {
  const isInSight = ([x, y]: Pixel) => x >= EDGE && y >= EDGE && x <= width - EDGE && y <= height - EDGE;
  const taken: Pixel[] = contours.map(({ home }) => home).filter(isInSight);
  return contours.map(({ home, lines }) => {
    if (isInSight(home)) return home;
    const place = nearestOnLines(lines, [width / 2, height / 2]);
    const isFree = place !== null && isInSight(place) && taken.every((other) => apart(place, other) >= APART);
    if (!isFree) return home;
    taken.push(place);
    return place;
  });
}

function nearestOnLines(lines: readonly (readonly Pixel[])[], to: Pixel): Pixel | null {
  let nearest: Pixel | null = null;
  for (const line of lines) {
    for (const [i, end] of line.entries()) {
      const place = nearestOnPart(line[i - 1] ?? end, end, to);
      if (nearest === null || apart(place, to) < apart(nearest, to)) nearest = place;
    }
  }
  return nearest;
}

function nearestOnPart([x, y]: Pixel, [endX, endY]: Pixel, [toX, toY]: Pixel): Pixel {
  const [dx, dy] = [endX - x, endY - y];
  const long = dx * dx + dy * dy;
  const along = long === 0 ? 0 : Math.max(0, Math.min(1, ((toX - x) * dx + (toY - y) * dy) / long));
  return [x + dx * along, y + dy * along];
}

function apart([x, y]: Pixel, [otherX, otherY]: Pixel): number {
  return Math.hypot(x - otherX, y - otherY);
}
