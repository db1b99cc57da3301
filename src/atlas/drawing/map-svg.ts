import { isobathMarks } from './isobath-marks.ts';
import { mapPath } from './map-path.ts';
import { partMarks } from './part-marks.ts';
import { besidePeg, PEG_RADIUS, type PegMark, pegMark } from './peg-mark.ts';
import { type PlaceMark, placeMark, placeRadius } from './place-mark.ts';
import { type SectionLine, sectionMarks } from './section-marks.ts';
import { type Point, simplifyLine } from './simplify-line.ts';
import { escapeMarkup } from './svg-markup.ts';

/** User units in one pixel at the map's natural size: enough for whole numbers to draw a smooth bank. */
export const UNITS_PER_PIXEL = 4;

const OUTLINE_TOLERANCE = 1.2;
/** Between marks, so that a finger meets one of them. */
const MARK_GAP = 10;
const FOOT = 100;

/** A map in user units, everything already placed. */
export interface MapDrawing {
  readonly width: number;
  readonly height: number;
  readonly label: string;
  readonly water: readonly Point[];
  readonly islands: readonly (readonly Point[])[];
  readonly areas: readonly { readonly kind: string; readonly name: string; readonly ring: readonly Point[] }[];
  readonly isobaths: readonly { readonly words: string; readonly lines: readonly (readonly Point[])[] }[];
  readonly paths: readonly (readonly Point[])[];
  /** A way to walk, drawn over the paths. */
  readonly route?: readonly Point[];
  /** Sections of a match, drawn as bands along their pegs. */
  readonly sections?: readonly SectionLine[];
  readonly overheadLines: readonly { readonly name: string; readonly line: readonly Point[] }[];
  /** Polygons of rings: where nobody may fish. */
  readonly standOffZones: readonly (readonly (readonly Point[])[])[];
  readonly places: readonly PlaceMark[];
  readonly pegs: readonly PegMark[];
  /** Whether each peg can be linked to: one map of a page at most. */
  readonly isAnchored?: boolean;
  readonly scaleBar: { readonly length: number; readonly words: string };
}

/**
 * The map as an SVG element, complete without script: each peg is a link to its sheet, a roundel with a beak that
 * touches the bank and points where the peg faces; a closed peg is a filled square.
 */
export function mapSvg(map: MapDrawing): string {
  const pixels = (units: number) => Math.round(units / UNITS_PER_PIXEL);
  const height = map.height + FOOT;
  const size = `width="${pixels(map.width)}" height="${pixels(height)}" viewBox="0 0 ${map.width} ${height}"`;
  return [
    `<svg class="water-map" ${size} role="group" aria-label="${escapeMarkup(map.label)}">`,
    PATTERNS,
    shape('water', [map.water, ...map.islands]),
    ...map.areas.map(({ kind, name, ring }) => shape(kind, [ring], name)),
    ...isobathMarks(map.isobaths),
    shape('island', map.islands),
    line('path', map.paths),
    ...map.standOffZones.map((rings) => shape('zone', rings, 'Stand-off of the overhead line: no fishing')),
    ...map.overheadLines.map(({ name, line: points }) => line('overhead', [points], name)),
    ...(map.route === undefined ? [] : [line('route', [map.route])]),
    ...(map.sections === undefined ? [] : [sectionMarks(map.sections, map.water)]),
    ...marks(map),
    foot(map),
    '</svg>',
  ].join('');
}

/** Fills that survive a black-and-white printer. */
const PATTERNS = `<defs>${[
  pattern('map-zone', 28, '<path class="m-hatch" d="M0 28L28 0"/>'),
  pattern('map-reeds', 20, '<path d="M5 18V6M14 12V1"/>'),
  pattern('map-lilies', 26, '<circle cx="8" cy="8" r="5"/><circle cx="20" cy="19" r="4"/>'),
  pattern('map-trees', 34, '<path d="M3 18a6 6 0 0 1 9-6a6 6 0 0 1 10 3a5 5 0 0 1-1 9h-14a5 5 0 0 1-4-6z"/>'),
].join('')}</defs>`;

function pattern(id: string, size: number, body: string): string {
  return `<pattern id="${id}" width="${size}" height="${size}" patternUnits="userSpaceOnUse">${body}</pattern>`;
}

/** Rings as one even-odd shape, so that an island is a hole in its water. */
function shape(kind: string, rings: readonly (readonly Point[])[], name = ''): string {
  const d = rings.map((ring) => mapPath(simplifyRing(ring), true)).join('');
  return d === '' ? '' : element(`m-${kind}`, d, name);
}

function line(kind: string, lines: readonly (readonly Point[])[], name = ''): string {
  const d = lines.map((points) => mapPath(simplifyLine(points, OUTLINE_TOLERANCE))).join('');
  return d === '' ? '' : element(`m-${kind}`, d, name);
}

function element(className: string, d: string, name: string): string {
  return name === ''
    ? `<path class="${className}" d="${d}"/>`
    : `<path class="${className}" d="${d}"><title>${escapeMarkup(name)}</title></path>`;
}

/** A ring has no ends to keep: it is split at the point farthest from its first one. */
export function simplifyRing(ring: readonly Point[], tolerance = OUTLINE_TOLERANCE): readonly Point[] {
  const [first] = ring;
  if (first === undefined || ring.length < 4) return ring;
  const distances = ring.map(([x, y]) => Math.hypot(x - first[0], y - first[1]));
  const far = distances.indexOf(Math.max(...distances));
  return [
    ...simplifyLine(ring.slice(0, far + 1), tolerance).slice(0, -1),
    ...simplifyLine([...ring.slice(far), first], tolerance).slice(0, -1),
  ];
}

/** Places and pegs, moved apart where they would hide one another. */
function marks({ places, pegs, isAnchored }: MapDrawing): readonly string[] {
  const middles = partMarks(
    [
      ...places.map((place) => ({ x: place.x, y: place.y, radius: placeRadius(place) })),
      ...pegs.map((peg) => {
        const [x, y] = besidePeg(peg);
        return { x, y, radius: PEG_RADIUS };
      }),
    ],
    MARK_GAP,
  );
  return [
    ...places.map((place, index) => placeMark(place, middles[index]!)),
    ...pegs.map((peg, index) => pegMark(peg, middles[places.length + index]!, isAnchored)),
  ];
}

/** Scale and north arrow, on a strip of their own below the ground. */
function foot({ width, height, scaleBar: { length, words } }: MapDrawing): string {
  const drawn = Math.round(length);
  const scale = `<path d="M0-16V0H${drawn}V-16"/><text x="${drawn + 14}" y="4">${escapeMarkup(words)}</text>`;
  const north = `<path d="M${width - 90} 4V-64M${width - 104}-40L${width - 90}-64L${width - 76}-40"/><text x="${width - 140}" y="4">N</text>`;
  return `<g class="m-foot" transform="translate(24 ${height + FOOT - 24})">${scale}${north}</g>`;
}
