import type { LatLng } from '../../../domain/place.ts';

/** A point, line or area of somebody's drawing or phone, before anybody has said what it is. */
export interface DrawnThing {
  readonly file: string;
  readonly name: string;
  /** What else was written to it. */
  readonly note: string;
  /** The venue's own word, where the drawing carries one. */
  readonly kind: string | null;
  /** A water named in a column of its own. */
  readonly waterText: string | null;
  readonly shape:
    | { readonly type: 'point'; readonly at: LatLng }
    | { readonly type: 'line'; readonly line: readonly LatLng[] }
    /** The first position is not repeated at the end. */
    | { readonly type: 'area'; readonly ring: readonly LatLng[]; readonly holes: readonly (readonly LatLng[])[] };
  /** Walked by a phone rather than drawn. */
  readonly isTrack: boolean;
  /** For a person: "walk.gpx, point 12". */
  readonly place: string;
}

/** The position of a thing that stands for it: its point, or its first corner. */
export function anchorOf({ shape }: DrawnThing): LatLng {
  if (shape.type === 'point') return shape.at;
  return shape.type === 'line' ? shape.line[0]! : shape.ring[0]!;
}
