/** The symbol of a safety sign as plain shapes: what is filled, what is stroked (with its width), and round dots. */
export interface SignSymbol {
  readonly fill?: string;
  readonly strokes?: readonly (readonly [number, string])[];
  /** Heads and the like: centre and radius. */
  readonly dots?: readonly (readonly [number, number, number])[];
}
