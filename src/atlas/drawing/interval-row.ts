import { ratioScale, type ScalePlace } from './ratio-scale.ts';
import { short, stroke, svgElement } from './svg-markup.ts';
import { type AxisWorth, whiskerEnd } from './worth-axis.ts';

const WORTH_WIDTH = 240;
const AMOUNT_WIDTH = 120;
const HEIGHT = 18;
const MIDDLE = 9;

/**
 * A worth as a dot and whisker small enough for a table row, with the par line; rows of one table line up. A whisker beyond 0.45 or
 * 2.2 par ends in an arrow head. The row's
 * own cells say the numbers, so the drawing has no words and is hidden from screen readers.
 */
export function intervalRow(shown: AxisWorth): string {
  const scale = ratioScale(0.45, 2.2, 6, WORTH_WIDTH - 6);
  const par = scale.place(1).at;
  return rowDrawing(WORTH_WIDTH, shown.evidence, stroke(par, 0, par, HEIGHT), {
    low: scale.place(shown.low),
    middle: scale.place(shown.value),
    high: scale.place(shown.high),
  });
}

/** The same for a quantity that is no worth: from `from` to `to` on an even scale, without a par line. */
export function amountRow(
  shown: { readonly value: number; readonly low: number; readonly high: number },
  from: number,
  to: number,
): string {
  const width = AMOUNT_WIDTH - 12;
  const place = (value: number): ScalePlace => {
    const share = (value - from) / (to - from || 1);
    return { at: 6 + width * Math.min(1, Math.max(0, share)), cut: share < 0 ? 'below' : share > 1 ? 'above' : 'no' };
  };
  return rowDrawing(AMOUNT_WIDTH, 'solid', '', {
    low: place(shown.low),
    middle: place(shown.value),
    high: place(shown.high),
  });
}

interface Places {
  readonly low: ScalePlace;
  readonly middle: ScalePlace;
  readonly high: ScalePlace;
}

function rowDrawing(width: number, evidence: string, par: string, { low, middle, high }: Places): string {
  const ends =
    whiskerEnd(low.at, MIDDLE, low.cut === 'no' ? 'stop' : 'left', 3) +
    whiskerEnd(high.at, MIDDLE, high.cut === 'no' ? 'stop' : 'right', 3);
  const dot = `<circle class="dot" cx="${short(middle.at)}" cy="${MIDDLE}" r="3.5"/>`;
  const line = par === '' ? '' : `<path class="par" d="${par}"/>`;
  const body = `${line}<g class="${evidence}"><path class="whisker" d="${stroke(low.at, MIDDLE, high.at, MIDDLE)}"/><path class="ends" d="${ends}"/>${dot}</g>`;
  return svgElement({ width, height: HEIGHT, kind: 'interval-row' }, body);
}
