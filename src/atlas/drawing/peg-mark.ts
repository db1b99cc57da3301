import { escapeMarkup } from './svg-markup.ts';

/** A peg on a map; x and y are where its platform stands. */
export interface PegMark {
  readonly peg: string;
  readonly href: string;
  /** Said to who cannot see the mark: "Peg 23, closed". */
  readonly label: string;
  /** On the day of the guide. */
  readonly closed: boolean;
  /** The peg's facts as JSON where that changes with the day. */
  readonly dated?: string | undefined;
  readonly x: number;
  readonly y: number;
  /** Degrees clockwise from the top of the map. */
  readonly facingDegrees: number;
}

/** Radius of the roundel, and how far behind the peg its middle stands while there is room. */
export const PEG_RADIUS = 36;
const PEG_BEHIND = 54;

/** Where the roundel of a peg would stand by itself: behind the platform, as the angler faces away from it. */
export function besidePeg({ x, y, facingDegrees }: PegMark): readonly [number, number] {
  const turn = (facingDegrees * Math.PI) / 180;
  return [x - PEG_BEHIND * Math.sin(turn), y + PEG_BEHIND * Math.cos(turn)];
}

/**
 * A roundel with a beak whose tip is the peg; a closed peg is a filled square. Both are links to the sheet; an anchor can be
 * linked to as `#map-23`.
 */
export function pegMark(mark: PegMark, [middleX, middleY]: readonly [number, number], isAnchor = false): string {
  const [x, y] = [Math.round(middleX), Math.round(middleY)];
  const square = (more = '') => `<path${more} d="M-34-34h68v68h-68z"/>`;
  const circle = (more = '') => `<circle${more} r="${PEG_RADIUS}"/>`;
  const body =
    mark.dated === undefined
      ? mark.closed
        ? square()
        : circle()
      : `${square(whenClosed(true, mark.closed))}${circle(whenClosed(false, mark.closed))}`;
  const dated =
    mark.dated === undefined
      ? ''
      : ` data-verdict="${escapeMarkup(mark.dated)}" data-closed-class="m-closed" data-label="${escapeMarkup(mark.peg)}"`;
  const long = mark.peg.length > 2 ? ' class="long"' : '';
  const anchor = isAnchor ? ` id="map-${escapeMarkup(mark.peg)}"` : '';
  const link = `class="m-peg${mark.closed ? ' m-closed' : ''}" href="${escapeMarkup(mark.href)}" aria-label="${escapeMarkup(mark.label)}"${dated}${anchor}`;
  return `<a ${link} transform="translate(${x} ${y})">${beak(mark.x - x, mark.y - y)}${body}<text y="15"${long}>${escapeMarkup(mark.peg)}</text></a>`;
}

/** Marks a shape that is drawn only while the peg is closed, or only while it is not. */
export function whenClosed(shapeOfClosed: boolean, isClosed: boolean): string {
  return ` data-when="${shapeOfClosed ? 'closed' : 'open'}"${shapeOfClosed === isClosed ? '' : ' display="none"'}`;
}

/** A wedge from the roundel to the peg. */
function beak(dx: number, dy: number): string {
  const distance = Math.hypot(dx, dy);
  if (distance < 1) return '';
  const [sideX, sideY] = [(-dy / distance) * 20, (dx / distance) * 20].map(Math.round) as [number, number];
  return `<path d="M${sideX} ${sideY}L${Math.round(dx)} ${Math.round(dy)}L${-sideX} ${-sideY}z"/>`;
}
