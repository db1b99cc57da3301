import { ratioScale } from './ratio-scale.ts';
import { type AxisReturn, whiskerEnd } from './return-axis.ts';
import { short, stroke, svgElement } from './svg-markup.ts';

const WIDTH = 120;
const HEIGHT = 18;
const MIDDLE = 9;

/**
 * A return as a dot and whisker small enough for a table row, with the par line; rows of one table line up. The row's
 * own cells say the numbers, so the drawing has no words and is hidden from screen readers.
 */
export function intervalRow(shown: AxisReturn): string {
  const scale = ratioScale(0.4, 2.5, 6, WIDTH - 6);
  const par = scale.place(1).at;
  return rowDrawing(shown.evidence, stroke(par, 0, par, HEIGHT), {
    low: scale.place(shown.low),
    middle: scale.place(shown.value),
    high: scale.place(shown.high),
  });
}

/** The same for a quantity that is no return: from `from` to `to` on an even scale, without a par line. */
export function amountRow(
  shown: { readonly value: number; readonly low: number; readonly high: number },
  from: number,
  to: number,
): string {
  const width = WIDTH - 12;
  const place = (value: number) => {
    const share = (value - from) / (to - from || 1);
    const cut = share < 0 ? ('below' as const) : share > 1 ? ('above' as const) : ('no' as const);
    return { at: 6 + width * Math.min(1, Math.max(0, share)), cut };
  };
  return rowDrawing('solid', '', { low: place(shown.low), middle: place(shown.value), high: place(shown.high) });
}

interface Places {
  readonly low: { readonly at: number; readonly cut: 'no' | 'below' | 'above' };
  readonly middle: { readonly at: number };
  readonly high: { readonly at: number; readonly cut: 'no' | 'below' | 'above' };
}

function rowDrawing(evidence: string, par: string, { low, middle, high }: Places): string {
  const ends =
    whiskerEnd(low.at, MIDDLE, low.cut === 'no' ? 'stop' : 'left', 3) +
    whiskerEnd(high.at, MIDDLE, high.cut === 'no' ? 'stop' : 'right', 3);
  const dot = `<circle class="dot" cx="${short(middle.at)}" cy="${MIDDLE}" r="3.5"/>`;
  const line = par === '' ? '' : `<path class="par" d="${par}"/>`;
  const body = `${line}<g class="${evidence}"><path class="whisker" d="${stroke(low.at, MIDDLE, high.at, MIDDLE)}"/><path class="ends" d="${ends}"/>${dot}</g>`;
  return svgElement({ width: WIDTH, height: HEIGHT, kind: 'interval-row' }, body);
}
