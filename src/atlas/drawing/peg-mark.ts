import { escapeMarkup } from './svg-markup.ts';

/** A peg on a map; x and y are where its platform stands. */
export interface PegMark {
  readonly peg: string;
  readonly href: string;
  /** Said to who cannot see the mark: "Peg 23, closed". */
  readonly label: string;
  readonly closed: boolean;
  readonly x: number;
  readonly y: number;
  /** Degrees clockwise from the top of the map. */
  readonly facingDegrees: number;
}

/** Radius of the roundel, and how far its beak stands out from its middle. */
const RADIUS = 36;
const BEAK = 54;

/** A roundel behind the peg with its beak at the bank; a closed peg is a filled square. Both are links to the sheet. */
export function pegMark(mark: PegMark): string {
  const turn = (mark.facingDegrees * Math.PI) / 180;
  const x = Math.round(mark.x - BEAK * Math.sin(turn));
  const y = Math.round(mark.y + BEAK * Math.cos(turn));
  const beak = `<path d="M-20-26L0-${BEAK}L20-26z" transform="rotate(${Math.round(mark.facingDegrees)})"/>`;
  const body = mark.closed ? `<path d="M-34-34h68v68h-68z"/>` : `<circle r="${RADIUS}"/>`;
  const long = mark.peg.length > 2 ? ' class="long"' : '';
  return `<a class="m-peg${mark.closed ? ' m-closed' : ''}" href="${escapeMarkup(mark.href)}" aria-label="${escapeMarkup(mark.label)}" transform="translate(${x} ${y})">${beak}${body}<text y="15"${long}>${escapeMarkup(mark.peg)}</text></a>`;
}
