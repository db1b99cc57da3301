import { whenClosed } from './peg-mark.ts';
import { smallBed } from './strip-bed.ts';
import { datedMark, isFolded, type StripPeg } from './strip-peg.ts';
import { escapeMarkup, short, svgText } from './svg-markup.ts';
import { tornAt } from './torn-bank.ts';

/** The bank about one peg, as the head of its sheet shows it. */
export interface BankPiece {
  /** From left to right as one faces the water. */
  readonly pegs: readonly StripPeg[];
  /** Which of them the sheet is of. */
  readonly here: number;
  readonly deepestMetres: number;
  readonly gapWords: (metres: number) => string;
}

const WIDTH = 360;
const SURFACE = 48;
const BOTTOM = 84;
/** Room for two notches to either side of the widest number. */
const NOTCHES_EACH_WAY = 2;
/** The number of the sheet's own peg: a digit's width of its height, and what all of it may take of the bank. */
const OWN_SIZE = 50;
const DIGIT_SHARE = 0.64;
const OWN_ROOM = 150;
const NEIGHBOUR_HALF = 17;

/**
 * One peg's piece of the bank unrolled: its number large in its notch, two neighbours to either side as links to their
 * sheets, the bed of each before it. Not to scale along the bank: the gap to the next peg is written over it. It shows no
 * worth, so that a closed peg may have one too.
 */
export function bankPiece(piece: BankPiece): string {
  const { pegs, here, deepestMetres, gapWords } = piece;
  const own = pegs[here]!;
  const size = Math.min(OWN_SIZE, OWN_ROOM / ([...own.peg].length * DIGIT_SHARE));
  const half = ([...own.peg].length * DIGIT_SHARE * size) / 2 + 9;
  const xs = pegs.map((_, i) => placeOf(i - here, half));
  const tears = tearsOf(piece, xs, half);
  const beside = pegs.flatMap((peg, i) => {
    const steps = i - here;
    if (steps === 0 || Math.abs(steps) > NOTCHES_EACH_WAY) return [];
    const gapMetres = Math.abs(steps) === 1 ? pegs[Math.min(i, here)]!.gapMetres : null;
    return [neighbour(peg, xs[i]!, gapMetres === null ? '' : gapWords(gapMetres))];
  });
  const isPlumbed = own.depthsMetres.some((depth) => depth !== null);
  const body = [
    `<path class="earth" d="M0,0H${WIDTH}V${SURFACE}H0z"/><path class="water" d="M0,${SURFACE}H${WIDTH}V${BOTTOM}H0z"/>`,
    smallBed(pegs, xs, { surface: SURFACE, bottom: BOTTOM, deepestMetres, edges: [-2, WIDTH + 2], tears }),
    ...tears.map((x) => (x === null ? '' : tornAt(x, -2, BOTTOM + 2))),
    ...beside,
    `<g class="b-here${own.closed ? ' b-closed' : ''}"${datedMark(own)} aria-hidden="true" transform="translate(${WIDTH / 2})">`,
    notch(half, 2),
    `<text class="own" y="${short(SURFACE - 7)}" font-size="${short(size)}">${escapeMarkup(own.peg)}</text></g>`,
    isPlumbed ? '' : svgText(WIDTH / 2, BOTTOM - 16, 'not plumbed', 'middle', 'said'),
  ];
  const said = `The bank about peg ${own.peg}`;
  return `<svg class="chart piece" viewBox="0 0 ${WIDTH} ${BOTTOM}" role="group" aria-label="${escapeMarkup(said)}">${body.join('')}</svg>`;
}

/** Where a peg stands that is so many pegs to the right: the own notch in the middle is the widest. */
function placeOf(steps: number, half: number): number {
  if (steps === 0) return WIDTH / 2;
  const first = half + 34;
  const next = Math.max(44, Math.min(62, (WIDTH / 2 - 24 - first) / (NOTCHES_EACH_WAY - 1)));
  return Math.round(WIDTH / 2 + Math.sign(steps) * (first + (Math.abs(steps) - 1) * next));
}

function notch(half: number, top: number): string {
  return `<path class="notch" d="M${short(-half)},${SURFACE}V${top}h${short(half * 2)}V${SURFACE}"/>`;
}

/** A neighbour's notch, and over it the way along the bank to it, or that it is closed: what a reader sees is its name, on every day. */
function neighbour(peg: StripPeg, x: number, gap: string): string {
  const over = (words: string, more = '') => (words === '' ? '' : `<text${more} y="13">${escapeMarkup(words)}</text>`);
  const said =
    peg.dated === undefined
      ? over(peg.closed ? 'closed' : gap)
      : over('closed', whenClosed(true, peg.closed)) + over(gap, whenClosed(false, peg.closed));
  return [
    `<a class="b-peg${peg.closed ? ' b-closed' : ''}" href="${escapeMarkup(peg.href)}"${datedMark(peg)} transform="translate(${x})">`,
    `<path class="hit" d="M-22,2h44v46h-44z"/>${notch(NEIGHBOUR_HALF, 20)}`,
    `<text class="number" y="40">${escapeMarkup(peg.peg)}</text> ${said}</a>`,
  ].join('');
}

/** Where the bank from each peg to the next is torn, between their notches; null where it is drawn whole. */
function tearsOf({ pegs, here }: BankPiece, xs: readonly number[], half: number): readonly (number | null)[] {
  const halfOf = (i: number) => (i === here ? half : NEIGHBOUR_HALF);
  return pegs.map(({ gapMetres }, i) =>
    gapMetres === null || !isFolded(gapMetres) ? null : (xs[i]! + halfOf(i) + xs[i + 1]! - halfOf(i + 1)) / 2,
  );
}
