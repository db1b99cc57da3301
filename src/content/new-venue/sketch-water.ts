import type { LatLng } from '../../domain/place.ts';

/** Of a sketch: where the first water lies, how far the next lie north of it, and how large a peg's share of a bank is. */
const ORIGIN: LatLng = { lat: 52.7, lng: -0.02 };
const APART_DEGREES = 0.01;
const PEG_METRES = 10;
const ACROSS_METRES = 40;
const METRES_A_DEGREE = 111_200;

export interface SketchedPeg {
  readonly peg: string;
  readonly at: LatLng;
}

/** A water nobody has drawn yet: a plain box with its pegs along the south bank and back along the north one. */
export interface SketchedWater {
  /** Without the repeated corner. */
  readonly outline: readonly LatLng[];
  readonly pegs: readonly SketchedPeg[];
}

/**
 * A place and shape for a water until its own are known. Round figures in the Fens' sea bank, told as placeholders wherever
 * they are written.
 * @param index which of the venue's waters it is, so that no two lie on one another
 */
export function sketchWater(pegs: readonly string[], index: number): SketchedWater {
  const aSide = Math.max(2, Math.ceil(pegs.length / 2));
  const long = aSide * PEG_METRES;
  const from = { lat: ORIGIN.lat + index * APART_DEGREES, lng: ORIGIN.lng };
  const at = (east: number, north: number): LatLng => placed(from, east, north);
  return {
    outline: [at(0, 0), at(long, 0), at(long, ACROSS_METRES), at(0, ACROSS_METRES)],
    pegs: pegs.map((peg, place) => {
      const isSouth = place < aSide;
      const along = isSouth ? place : 2 * aSide - 1 - place;
      const east = (along + 0.5) * PEG_METRES;
      return { peg, at: at(east, isSouth ? -1 : ACROSS_METRES + 1) };
    }),
  };
}

function placed({ lat, lng }: LatLng, east: number, north: number): LatLng {
  const metresEast = METRES_A_DEGREE * Math.cos((lat * Math.PI) / 180);
  return { lat: rounded(lat + north / METRES_A_DEGREE), lng: rounded(lng + east / metresEast) };
}

function rounded(degrees: number): number {
  return Number(degrees.toFixed(6));
}
