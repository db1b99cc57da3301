import { featureSign } from './feature-sign.ts';
import { type BedFrame, depthAt, lineNames, stripBed } from './strip-bed.ts';
import { datedMark, isFolded, placeAlong, type StripPeg } from './strip-peg.ts';
import { stripWorths, WORTH_BOTTOM, worthScale } from './strip-worth.ts';
import { escapeMarkup, short, stroke, svgPath, svgText } from './svg-markup.ts';
import { tornAt } from './torn-bank.ts';

/** A level of the depth scale with its words: `1 m`. */
export interface DepthMark {
  readonly depthMetres: number;
  readonly words: string;
}

export interface BankStrip {
  readonly pegs: readonly StripPeg[];
  readonly nowMonth: number;
  readonly deepestMetres: number;
  readonly depthMarks: readonly DepthMark[];
  /** Lengths of the gaps that are drawn shortened: `62 m`. */
  readonly gapWords: (metres: number) => string;
}

const SIGN_ROW = 16;
const SIGNS_A_ROW = 2;
const BANK_HEIGHT = 36;
const WATER_HEIGHT = 100;
/** The root's text is 17 pixels high: sizes in its terms grow with the reader's own. */
const UNITS_PER_REM = 17;

/** The strip cut into drawings of some pegs each, which join without a seam, so that paper can break it into lines. */
export function bankTiles(strip: BankStrip, pegsATile: number): readonly string[] {
  const { xs, width } = placeAlong(strip.pegs);
  const cuts = [0];
  for (let i = pegsATile; i < strip.pegs.length; i += pegsATile) {
    // A last tile of one peg would stand alone on a line of paper.
    if (strip.pegs.length - i > 1) cuts.push(i);
  }
  return cuts.map((first, tile) => {
    const end = cuts[tile + 1] ?? strip.pegs.length;
    const from = first === 0 ? 0 : middle(xs[first - 1]!, xs[first]!);
    const to = end === strip.pegs.length ? width : middle(xs[end - 1]!, xs[end]!);
    return bankTile(strip, xs, { first, end, from, to });
  });
}

interface Cut {
  readonly first: number;
  readonly end: number;
  readonly from: number;
  readonly to: number;
}

function bankTile(strip: BankStrip, xs: readonly number[], { first, end, from, to }: Cut): string {
  const rows = Math.max(1, ...strip.pegs.map(({ features }) => Math.ceil(features.length / SIGNS_A_ROW)));
  const signs = WORTH_BOTTOM + 14;
  const bank = signs + rows * SIGN_ROW + 12;
  const frame = {
    surface: bank + BANK_HEIGHT,
    bottom: bank + BANK_HEIGHT + WATER_HEIGHT,
    deepestMetres: strip.deepestMetres,
  };
  const height = frame.bottom + 20;
  const tears = strip.pegs.map(({ gapMetres }, i) =>
    gapMetres !== null && isFolded(gapMetres) ? middle(xs[i]!, xs[i + 1]!) : null,
  );
  const own = strip.pegs.slice(first, end);
  const ownXs = xs.slice(first, end);
  // The pegs beside this tile too: what is joined to them runs on past its edge, as steep as in the tile beside.
  const [near, far] = [Math.max(0, first - 2), Math.min(strip.pegs.length, end + 2)];
  const body = [
    rules(from, to),
    ...worthWords(from),
    stripWorths(own, ownXs, strip.nowMonth),
    `<rect class="water" x="${short(from)}" y="${frame.surface}" width="${short(to - from)}" height="${WATER_HEIGHT}"/>`,
    stripBed(strip.pegs.slice(near, far), xs.slice(near, far), { ...frame, tears: tears.slice(near, far) }),
    `<rect class="earth" x="${short(from)}" y="${bank}" width="${short(to - from)}" height="${BANK_HEIGHT}"/>`,
    svgPath(stroke(from, frame.surface, to, frame.surface), 'surface'),
    ...folds(strip, tears, { near, far, bank, bottom: frame.bottom }),
    ...own.map((peg, i) => notch(peg, ownXs[i]!, { signs, bank, ...frame })),
    first === 0 ? lineNames(own[0]!, ownXs[0]!, frame) : '',
    ...strip.depthMarks.map(({ depthMetres, words }) =>
      svgText(from + 1, depthAt(frame, depthMetres) + 3, words, 'start', 'scale deep'),
    ),
  ];
  const said = `Bank from peg ${own[0]!.peg} to peg ${own.at(-1)!.peg}`;
  const size = `width="${rem(to - from)}" height="${rem(height)}" viewBox="${short(from)} 0 ${short(to - from)} ${height}"`;
  return `<svg class="bank-strip" ${size} role="group" aria-label="${escapeMarkup(said)}">${body.join('')}</svg>`;
}

function rem(units: number): string {
  return `${Math.round((units / UNITS_PER_REM) * 1000) / 1000}rem`;
}

function middle(a: number, b: number): number {
  return (a + b) / 2;
}

function rules(from: number, to: number): string {
  const level = (ratio: number) => stroke(from, worthScale.place(ratio).at, to, worthScale.place(ratio).at);
  return svgPath(level(0.5) + level(2), 'rule') + svgPath(level(1), 'par');
}

/** Below the dots: where a tile's first peg stands close to its edge, its dot lies over the words. */
function worthWords(from: number): readonly string[] {
  const at = (ratio: number, words: string) =>
    svgText(from + 1, worthScale.place(ratio).at + 3, words, 'start', 'scale');
  return [at(2, '×2'), at(1, 'par'), at(0.5, '×½')];
}

/** Bank that is drawn shorter than it is, torn out of the drawing, with its length above. */
function folds(
  { pegs, gapWords }: BankStrip,
  tears: BedFrame['tears'],
  { near, far, bank, bottom }: Torn,
): readonly string[] {
  return tears.slice(near, far - 1).flatMap((x, i) => {
    if (x === null) return [];
    return [tornAt(x, bank, bottom), svgText(x, bank - 4, gapWords(pegs[near + i]!.gapMetres!))];
  });
}

interface Torn {
  readonly near: number;
  readonly far: number;
  readonly bank: number;
  readonly bottom: number;
}

interface Levels {
  readonly surface: number;
  readonly bottom: number;
  readonly signs: number;
  readonly bank: number;
}

/** A peg as a notch in the bank, a link to its sheet: its number, hazards as ticks above, signs of its features, a plumb line. */
function notch(peg: StripPeg, x: number, { signs, bank, surface, bottom }: Levels): string {
  const kind = `b-peg${peg.closed ? ' b-closed' : ''}`;
  return [
    `<a class="${kind}" href="${escapeMarkup(peg.href)}" aria-label="${escapeMarkup(peg.label)}"${datedMark(peg)}>`,
    `<path class="hit" d="M${short(x - 19)},${signs - 8}h38V${surface + 6}h-38z"/>`,
    ...peg.features.map((feature, i) => {
      const inRow = Math.min(SIGNS_A_ROW, peg.features.length - Math.floor(i / SIGNS_A_ROW) * SIGNS_A_ROW);
      const across = ((i % SIGNS_A_ROW) - (inRow - 1) / 2) * 18;
      return featureSign(feature, x + across, signs + Math.floor(i / SIGNS_A_ROW) * SIGN_ROW);
    }),
    ticks(peg, x, bank),
    `<path class="notch" d="M${short(x - 16)},${surface}v-32h32v32"/>`,
    `<text class="number" x="${short(x)}" y="${surface - 11}">${escapeMarkup(peg.peg)}</text>`,
    `<path class="plumb" d="M${short(x)},${surface}V${bottom}"/>`,
    '</a>',
    svgText(x, bottom + 14, peg.figure === '' ? '–' : peg.figure, 'middle', 'figure'),
  ].join('');
}

/** Most ticks that find room over a notch; the number of all of them is written where there are more. */
const MAX_TICKS = 5;

function ticks({ hazards }: StripPeg, x: number, bank: number): string {
  if (hazards.length > MAX_TICKS) return svgText(x, bank - 2, `${hazards.length} hazards`);
  const ordered = [...hazards].sort((a, b) => Number(b.hardRule) - Number(a.hardRule));
  const at = (i: number) => x + (i - (ordered.length - 1) / 2) * 6;
  const drawn = (hard: boolean) =>
    ordered.flatMap(({ hardRule }, i) => (hardRule === hard ? [stroke(at(i), bank - 10, at(i), bank)] : [])).join('');
  return svgPath(drawn(true), 'tick hard') + svgPath(drawn(false), 'tick');
}
