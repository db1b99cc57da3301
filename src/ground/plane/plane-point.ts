/** A point of a local plane, in metres: x to the east, y to the north. */
export interface PlanePoint {
  readonly x: number;
  readonly y: number;
}

/** A closed ring; the first point is not repeated at the end. */
export type PlaneRing = readonly PlanePoint[];
