import { ratioScale, type ScalePlace } from './ratio-scale.ts';
import { escapeMarkup, short, stroke, svgElement, svgPath, svgText } from './svg-markup.ts';
import type { AxisWorth } from './worth-axis.ts';

/** One bar: a worth, or null where nothing is known (a gap with a dash under it). */
export interface WorthBar {
  /** Under the bar: `N`, `8`. */
  readonly letter: string;
  readonly shown: AxisWorth | null;
  /** Attribute that lets a script find the bar again: `data-month="11"`. */
  readonly mark?: string;
  /** The present one, in the accent. */
  readonly now: boolean;
}

const BAR_SLOT = 28;
const LEFT = 20;
const RIGHT = 4;
const PAR = 46;
const REACH = 42;
const LETTERS = PAR + REACH + 17;
const FIGURES = PAR + REACH + 32;

/**
 * Small bars above and below a par line, their middle figure printed under each. Evidence is in the stroke: solid is
 * filled, fair is pale, thin is hollow and dashed. A fine line through each bar is its 80% interval, cut at 0.45 and
 * 2.2 par with a tick across where it goes on.
 */
export function worthBars(bars: readonly WorthBar[], label: string, kind: string): string {
  const width = LEFT + RIGHT + BAR_SLOT * bars.length;
  const scale = ratioScale(0.45, 2.2, PAR + REACH, PAR - REACH);
  const rules = [0.5, 1, 2].map((ratio) => {
    const { at } = scale.place(ratio);
    const line = svgPath(stroke(LEFT, at, width, at), ratio === 1 ? 'par' : 'rule');
    return line + svgText(LEFT - 3, at + 4, ratio === 1 ? 'par' : `×${ratio === 2 ? '2' : '½'}`, 'end');
  });
  const body = bars.map((bar, index) => {
    const middle = LEFT + BAR_SLOT * (index + 0.5);
    const classes = `bar ${bar.shown?.evidence ?? 'none'}${bar.now ? ' now' : ''}`;
    const mark = bar.mark === undefined ? '' : ` ${bar.mark}`;
    const letter = areSingle(bars) ? '' : `<text y="${LETTERS}" class="letter">${escapeMarkup(bar.letter)}</text>`;
    // Moved as a whole: its place is written once.
    return `<g class="${classes}"${mark} transform="translate(${middle})">${letter}${barDrawing(bar, scale.place)}</g>`;
  });
  const letters = areSingle(bars) ? letterRow(bars) : '';
  return svgElement({ width, height: PAR + REACH + 36, label, kind }, rules.join('') + body.join('') + letters);
}

/** To a whole unit, which is a pixel on a phone: a sheet has twelve bars, and every digit has to be fetched. */
function whole({ at, cut }: ScalePlace): ScalePlace {
  return { at: Math.round(at), cut };
}

/** One text with a place for each letter weighs a third of twelve. */
function letterRow(bars: readonly WorthBar[]): string {
  const places = bars.map((_, index) => short(LEFT + BAR_SLOT * (index + 0.5))).join(' ');
  return `<text x="${places}" y="${LETTERS}" class="letter">${bars.map(({ letter }) => letter).join('')}</text>`;
}

function areSingle(bars: readonly WorthBar[]): boolean {
  return bars.every(({ letter }) => /^[A-Z0-9]$/.test(letter));
}

/** A bar about the level of its own middle. */
function barDrawing(bar: WorthBar, place: (ratio: number) => ScalePlace): string {
  const figure = (words: string) => `<text y="${FIGURES}">${words}</text>`;
  if (bar.shown === null) return figure('–');
  const { value, low, high } = bar.shown;
  const [end, lowEnd, highEnd] = [place(value), place(low), place(high)].map(whole) as [
    ScalePlace,
    ScalePlace,
    ScalePlace,
  ];
  const top = Math.min(end.at, PAR);
  const height = Math.max(Math.abs(end.at - PAR), 0.8);
  const ends = [lowEnd, highEnd].map(({ at, cut }) => (cut === 'no' ? '' : `M-3,${at}h6`)).join('');
  const rect = `<rect x="-8.5" y="${short(top)}" width="17" height="${short(height)}"/>`;
  return `${rect}<path class="reach" d="M0,${lowEnd.at}V${highEnd.at}${ends}"/>${figure(value.toFixed(2))}`;
}
