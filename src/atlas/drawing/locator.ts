import { clipRing } from './clip-ring.ts';
import { mapPath } from './map-path.ts';
import { simplifyRing } from './map-svg.ts';
import { partsInSight } from './parts-in-sight.ts';
import { whenClosed } from './peg-mark.ts';
import type { Point } from './simplify-line.ts';
import { escapeMarkup } from './svg-markup.ts';

export const LOCATOR_WIDTH = 480;
export const LOCATOR_HEIGHT = 400;

/** A small map about one peg, in user units from its top left corner. */
export interface LocatorDrawing {
  readonly label: string;
  readonly water: readonly Point[];
  readonly islands: readonly (readonly Point[])[];
  /** The ground an overhead line closes to fishing. */
  readonly zones: readonly (readonly Point[])[];
  readonly overheadLines: readonly (readonly Point[])[];
  readonly me: Point;
  /** The fishing sector: from the peg to its arc. */
  readonly facingDegrees: number;
  readonly sectorDegrees: number;
  readonly reach: number;
  readonly neighbours: readonly {
    readonly peg: string;
    readonly at: Point;
    readonly facingDegrees: number;
    readonly closed: boolean;
    /** Facts as JSON where that changes with the day. */
    readonly dated?: string | undefined;
  }[];
}

const MARGIN = 8;
/** A locator is drawn a sixth to half its size: a bend smaller than this is not seen, and costs every sheet its bytes. */
const TOLERANCE = 4;
/** How far behind its dot a neighbour's number stands. */
const NUMBER_BEHIND = 34;

/** The bank about a peg, north up: water, islands, the sector it fishes, its neighbours by number, overhead lines. */
export function locatorSvg(map: LocatorDrawing): string {
  const rings = (shapes: readonly (readonly Point[])[]) =>
    shapes
      .map((ring) => mapPath(simplifyRing(clipRing(ring, LOCATOR_WIDTH, LOCATOR_HEIGHT, MARGIN), TOLERANCE), true))
      .join('');
  const path = (className: string, d: string) => (d === '' ? '' : `<path class="${className}" d="${d}"/>`);
  const [x, y] = map.me.map(Math.round) as [number, number];
  return [
    `<svg class="locator" viewBox="0 0 ${LOCATOR_WIDTH} ${LOCATOR_HEIGHT}" role="img" aria-label="${escapeMarkup(map.label)}">`,
    path('m-water', rings([map.water, ...map.islands])),
    path('m-sector', sectorPath(map)),
    path('l-zone', rings(map.zones)),
    path(
      'm-overhead',
      map.overheadLines
        .flatMap((line) => partsInSight(line, LOCATOR_WIDTH, LOCATOR_HEIGHT, MARGIN))
        .map((part) => mapPath(part))
        .join(''),
    ),
    ...map.neighbours.map(neighbour),
    `<circle class="l-me" cx="${x}" cy="${y}" r="15"/>`,
    `<path class="l-north" d="M${LOCATOR_WIDTH - 24} 66V16m-10 16l10-16l10 16"/>`,
    '</svg>',
  ].join('');
}

function sectorPath({ me, facingDegrees, sectorDegrees, reach }: LocatorDrawing): string {
  const half = Math.min(sectorDegrees, 359) / 2;
  const corner = (degrees: number): string => {
    const turn = (degrees * Math.PI) / 180;
    return `${Math.round(me[0] + reach * Math.sin(turn))} ${Math.round(me[1] - reach * Math.cos(turn))}`;
  };
  const radius = Math.round(reach);
  const large = half > 90 ? 1 : 0;
  return `M${Math.round(me[0])} ${Math.round(me[1])}L${corner(facingDegrees - half)}A${radius} ${radius} 0 ${large} 1 ${corner(facingDegrees + half)}z`;
}

function neighbour({ peg, at, facingDegrees, closed, dated }: LocatorDrawing['neighbours'][number]): string {
  const turn = (facingDegrees * Math.PI) / 180;
  const [x, y] = [Math.round(at[0]), Math.round(at[1])];
  const square = (more = '') => `<path class="l-peg"${more} d="M${x - 8} ${y - 8}h16v16h-16z"/>`;
  const circle = (more = '') => `<circle class="l-peg"${more} cx="${x}" cy="${y}" r="8"/>`;
  const mark =
    dated === undefined
      ? closed
        ? square()
        : circle()
      : `<g data-verdict="${escapeMarkup(dated)}">${square(whenClosed(true, closed))}${circle(whenClosed(false, closed))}</g>`;
  const behindX = Math.round(at[0] - NUMBER_BEHIND * Math.sin(turn));
  const behindY = Math.round(at[1] + NUMBER_BEHIND * Math.cos(turn)) + 11;
  return `${mark}<text x="${behindX}" y="${behindY}">${escapeMarkup(peg)}</text>`;
}
