import { type RatioScale, ratioScale, type ScalePlace } from './ratio-scale.ts';
import { short, stroke, svgElement, svgPath, svgText } from './svg-markup.ts';

/** A worth with its 80% interval, as multiples of par. */
export interface AxisWorth {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly evidence: 'thin' | 'fair' | 'solid';
}

/** A worth to be drawn on the axis; the class and attribute of its group let a page show one of many. */
export interface AxisMark {
  readonly shown: AxisWorth;
  readonly className?: string;
  /** `data-month="11"` */
  readonly mark?: string;
}

const WIDTH = 340;
const HEIGHT = 50;
const MIDDLE = 20;
const TICKS = [0.5, 0.7, 1.4, 2] as const;

/**
 * Dots and whiskers on one ratio axis with a line at par. The axis runs from 0.4 to 2.5 par; a whisker that leaves it ends
 * in an arrow head. Thin evidence is drawn hollow and dashed. It stands below its words ("0.82 par, likely 0.66 to 1.02"),
 * which carry the numbers, so it is hidden from screen readers.
 */
export function worthAxis(marks: readonly AxisMark[]): string {
  const scale = ratioScale(0.4, 2.5, 14, WIDTH - 14);
  const upright = (ratio: number) => stroke(scale.place(ratio).at, 4, scale.place(ratio).at, 36);
  const rules = svgPath(TICKS.map(upright).join(''), 'rule') + svgPath(upright(1), 'par');
  const words = [...TICKS, 1].map((ratio) => {
    return svgText(scale.place(ratio).at, HEIGHT - 2, ratio === 1 ? 'par' : `× ${ratio}`);
  });
  const groups = marks.map((mark) => axisMark(mark, scale));
  return svgElement({ width: WIDTH, height: HEIGHT, kind: 'worth-axis' }, rules + words.join('') + groups.join(''));
}

function axisMark({ shown, className = '', mark = '' }: AxisMark, scale: RatioScale): string {
  // Whole units: the axis is coarse enough, and twelve months of decimals are not free.
  const place = (ratio: number) => {
    const { at, cut } = scale.place(ratio);
    return { at: Math.round(at), cut };
  };
  const [low, dot, high] = [place(shown.low), place(shown.value), place(shown.high)];
  const whisker = svgPath(levelWhisker(low, high), 'whisker');
  const group = `class="${`${shown.evidence} ${className}`.trim()}"${mark === '' ? '' : ` ${mark}`}`;
  return `<g ${group}>${whisker}<circle cx="${dot.at}" cy="${MIDDLE}" r="6"/></g>`;
}

/** A level whisker with both its ends. */
function levelWhisker(low: ScalePlace, high: ScalePlace): string {
  if (low.cut !== 'no' || high.cut !== 'no') {
    return (
      stroke(low.at, MIDDLE, high.at, MIDDLE) +
      whiskerEnd(low.at, MIDDLE, low.cut === 'no' ? 'stop' : 'left') +
      whiskerEnd(high.at, MIDDLE, high.cut === 'no' ? 'stop' : 'right')
    );
  }
  // By far the most, twelve to a sheet: each place is written once.
  return `M${low.at},${MIDDLE - 6}v12m0-6H${high.at}m0-6v12`;
}

/** The end of a level whisker: a stop, or an arrow head where it goes on beyond the drawing. */
export function whiskerEnd(x: number, y: number, end: 'stop' | 'left' | 'right', half = 6): string {
  if (end === 'stop') return stroke(x, y - half, x, y + half);
  const back = end === 'left' ? half : -half;
  return `M${short(x + back)},${short(y - half)}L${short(x)},${short(y)}l${short(back)},${short(half)}`;
}
