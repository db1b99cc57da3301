import type { LatLng } from '../domain/place.ts';
import { fromOsgb36, toOsgb36 } from './geodesy/osgb36.ts';
import { type GridPosition, gridToPosition, positionToGrid } from './geodesy/transverse-mercator.ts';

const SQUARE_500_KM = 500_000;
const SQUARE_100_KM = 100_000;
/** A to Z without I, five to a row, the first row in the north. */
const LETTERS = 'ABCDEFGHJKLMNOPQRSTUVWXYZ';
/** S, the 500 km square of the true origin, stands in the fourth row and third column of the letters. */
const ORIGIN_COLUMN = 2;
const ORIGIN_ROW = 1;
const EASTERN_EDGE_METRES = 700_000;
/** The 100 km squares that hold land of Great Britain; the rest of the grid is sea, Ireland or France. */
const SQUARES_WITH_LAND = new Set(
  (
    'SV SW SX SY SZ TV SR SS ST SU TQ TR SM SN SO SP TL TM SH SJ SK TF TG SC SD SE TA NW NX NY NZ OV NR NS NT NU ' +
    'NL NM NN NO NF NG NH NJ NK NA NB NC ND HW HX HY HZ HT HU HP'
  ).split(' '),
);
const PATTERN = /^([A-HJ-Z])([A-HJ-Z])\s*(\d{2,5})\s*(\d{2,5})$|^([A-HJ-Z])([A-HJ-Z])\s*(\d{4}|\d{6}|\d{8}|\d{10})$/;
/** The form of a reference, for editors, without a word on which squares there are. */
export const GRID_REFERENCE_FORM = new RegExp(PATTERN, 'i');

/**
 * Eastings and northings on the National Grid, WGS 84 brought to OSGB36 by the Ordnance Survey's seven-parameter shift,
 * which is good to about 5 m (A Guide to Coordinate Systems in Great Britain, annex C and section 6.6).
 */
export function toNationalGrid(position: LatLng): GridPosition {
  return positionToGrid(toOsgb36(position));
}

/** The WGS 84 position of a place on the National Grid, the same shift turned about. */
export function fromNationalGrid(place: GridPosition): LatLng {
  return fromOsgb36(gridToPosition(place));
}

/**
 * The grid reference of a position with two letters and eight figures, a square of 10 m: `TF 3127 1880`. More figures
 * would claim more than the shift gives. Figures name the square's south-west corner, so they are cut, not rounded.
 * Null outside the squares that hold land of Great Britain.
 */
export function gridReference(position: LatLng): string | null {
  if (!isOnNationalGrid(position)) return null;
  return formatGridReference(toNationalGrid(position), 8);
}

/**
 * Whether a position lies where the National Grid is used. Squares of 100 km alone would take in Wexford, the Ards and
 * Calais; the boxes that leave them out run through the sea between (read off a map, to a tenth of a degree).
 */
function isOnNationalGrid({ lat, lng }: LatLng): boolean {
  // Beyond these the projection's series mean nothing.
  if (lat < 49.8 || lat > 61 || lng < -8.8 || lng > 1.9) return false;
  const inIreland = (lat > 51.3 && lat < 55.2 && lng < -5.4) || (lat >= 55.2 && lat < 55.5 && lng < -5.95);
  const inFrance = lat < 51.1 && lng > 1.45;
  return !inIreland && !inFrance;
}

/** Letters and figures for a place on the grid, cut to the given number of figures; null where no land of Great Britain is. */
export function formatGridReference(
  { eastingMetres, northingMetres }: GridPosition,
  figures: 6 | 8 | 10,
): string | null {
  if (eastingMetres < 0 || eastingMetres >= EASTERN_EDGE_METRES) return null;
  // To the south and north the letters run out or name sea; to the east they would come round.
  const square = lettersOf(eastingMetres, northingMetres);
  if (!SQUARES_WITH_LAND.has(square)) return null;
  const cut = (metres: number) =>
    Math.floor(metres % SQUARE_100_KM)
      .toString()
      .padStart(5, '0')
      .slice(0, figures / 2);
  return `${square} ${cut(eastingMetres)} ${cut(northingMetres)}`;
}

/**
 * The WGS 84 position a grid reference names, or null where the text is none: two letters of a square with land of
 * Great Britain and 4, 6, 8 or 10 figures, with or without spaces. The middle of the square named is meant, since the
 * figures are its corner.
 */
export function parseGridReference(text: string): LatLng | null {
  const match = PATTERN.exec(text.trim().toUpperCase());
  if (match === null) return null;
  const letters = `${match[1] ?? match[5]}${match[2] ?? match[6]}`;
  const figures = match[7] ?? `${match[3]}${match[4]}`;
  if (match[7] === undefined && match[3]!.length !== match[4]!.length) return null;
  if (!SQUARES_WITH_LAND.has(letters)) return null;
  const half = figures.length / 2;
  const size = 10 ** (5 - half);
  const corner = cornerOf(letters);
  return fromNationalGrid({
    eastingMetres: corner.eastingMetres + Number(figures.slice(0, half)) * size + size / 2,
    northingMetres: corner.northingMetres + Number(figures.slice(half)) * size + size / 2,
  });
}

function lettersOf(eastingMetres: number, northingMetres: number): string {
  const large = letterAt(
    Math.floor(eastingMetres / SQUARE_500_KM) + ORIGIN_COLUMN,
    Math.floor(northingMetres / SQUARE_500_KM) + ORIGIN_ROW,
  );
  const small = letterAt(
    Math.floor((eastingMetres % SQUARE_500_KM) / SQUARE_100_KM),
    Math.floor((northingMetres % SQUARE_500_KM) / SQUARE_100_KM),
  );
  return large + small;
}

/** The letter at a column from the west and a row from the south. */
function letterAt(column: number, row: number): string {
  return LETTERS[(4 - row) * 5 + column] as string;
}

function cornerOf(letters: string): GridPosition {
  const [large, small] = [LETTERS.indexOf(letters[0]!), LETTERS.indexOf(letters[1]!)];
  return {
    eastingMetres: ((large % 5) - ORIGIN_COLUMN) * SQUARE_500_KM + (small % 5) * SQUARE_100_KM,
    northingMetres:
      (4 - Math.floor(large / 5) - ORIGIN_ROW) * SQUARE_500_KM + (4 - Math.floor(small / 5)) * SQUARE_100_KM,
  };
}
