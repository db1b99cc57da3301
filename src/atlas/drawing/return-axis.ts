import { ratioScale } from './ratio-scale.ts';
import { short, stroke, svgElement, svgText } from './svg-markup.ts';

/** A return with its 80% interval, as multiples of par. */
export interface AxisReturn {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly evidence: 'thin' | 'fair' | 'solid';
}

const WIDTH = 340;
const HEIGHT = 50;
const MIDDLE = 20;
const TICKS = [0.5, 0.7, 1, 1.4, 2] as const;

/**
 * A dot and whisker on a ratio axis with a line at par. The axis runs from 0.4 to 2.5 par; a whisker that leaves it ends
 * in an arrow head. Thin evidence is drawn hollow and dashed.
 */
export function returnAxis(shown: AxisReturn, label: string): string {
  const scale = ratioScale(0.4, 2.5, 14, WIDTH - 14);
  const ticks = TICKS.map((tick) => {
    const { at } = scale.place(tick);
    return `<path class="${tick === 1 ? 'par' : 'rule'}" d="${stroke(at, 4, at, 36)}"/>${svgText(at, HEIGHT - 2, tick === 1 ? 'par' : `× ${tick}`)}`;
  });
  const low = scale.place(shown.low);
  const high = scale.place(shown.high);
  const dot = scale.place(shown.value);
  const ends =
    whiskerEnd(low.at, MIDDLE, low.cut === 'no' ? 'stop' : 'left') +
    whiskerEnd(high.at, MIDDLE, high.cut === 'no' ? 'stop' : 'right');
  const marks = `<g class="${shown.evidence}"><path class="whisker" d="${stroke(low.at, MIDDLE, high.at, MIDDLE)}"/><path class="ends" d="${ends}"/><circle class="dot" cx="${short(dot.at)}" cy="${MIDDLE}" r="6"/></g>`;
  return svgElement({ width: WIDTH, height: HEIGHT, label, kind: 'return-axis' }, ticks.join('') + marks);
}

/** The end of a level whisker: a stop, or an arrow head where it goes on beyond the drawing. */
export function whiskerEnd(x: number, y: number, end: 'stop' | 'left' | 'right', half = 6): string {
  if (end === 'stop') return stroke(x, y - half, x, y + half);
  const back = end === 'left' ? half : -half;
  return `M${short(x + back)},${short(y - half)}L${short(x)},${short(y)}l${short(back)},${short(half)}`;
}
