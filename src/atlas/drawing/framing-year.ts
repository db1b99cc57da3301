import { evenMarks } from './even-marks.ts';
import { MONTH_LETTERS } from './month-letters.ts';
import { short, stroke, svgElement, svgPath, svgText } from './svg-markup.ts';

/** A weight in the unit shown, with its range over the month's events, and its words for the row below. */
export interface FramingWeight {
  readonly middle: number;
  readonly low: number;
  readonly high: number;
  readonly words: string;
}

/** Weight to frame and to win in one month; null where no event says. */
export interface FramingBar {
  readonly frame: FramingWeight | null;
  readonly win: FramingWeight | null;
}

const SLOT = 27;
const LEFT = 36;
const TOP = 12;
const PANEL = 110;

/**
 * Weight to frame (dot) and to win (hollow square) by month, each with the range over that month's events. The middle
 * figures stand in two rows below; the present month's group carries `now`.
 */
export function framingYear(months: readonly FramingBar[], nowMonth: number, unit: string, label: string): string {
  const highest = Math.max(...months.flatMap(({ frame, win }) => [frame?.high ?? 0, win?.high ?? 0]), 1);
  const marks = evenMarks(0, highest);
  const up = (weight: number) => TOP + PANEL * (1 - weight / marks.at(-1)!);
  const width = LEFT + SLOT * 12 + 2;
  const grid = marks.map((mark) => {
    const line = svgPath(stroke(LEFT, up(mark), width, up(mark)), mark === 0 ? 'par' : 'rule');
    return line + svgText(LEFT - 5, up(mark) + 4, String(mark), 'end');
  });
  const groups = months.map((month, index) => {
    const middle = LEFT + SLOT * (index + 0.5);
    const now = index + 1 === nowMonth ? ' now' : '';
    const base = TOP + PANEL;
    const rows =
      svgText(middle, base + 16, MONTH_LETTERS.charAt(index), 'middle', 'letter') +
      svgText(middle, base + 32, month.frame?.words ?? '–') +
      svgText(middle, base + 47, month.win?.words ?? '–');
    return `<g class="bar solid${now}" data-month="${index + 1}">${frameMark(month.frame, middle - 5, up)}${winMark(month.win, middle + 5, up)}${rows}</g>`;
  });
  const names =
    svgText(LEFT - 5, TOP + PANEL + 32, 'frame', 'end', 'said') +
    svgText(LEFT - 5, TOP + PANEL + 47, 'win', 'end', 'said') +
    svgText(2, 9, unit, 'start', 'said');
  return svgElement(
    { width, height: TOP + PANEL + 52, label, kind: 'framing-year' },
    grid.join('') + groups.join('') + names,
  );
}

function frameMark(weight: FramingWeight | null, x: number, up: (weight: number) => number): string {
  if (weight === null) return '';
  const dot = `<circle class="dot" cx="${short(x)}" cy="${short(up(weight.middle))}" r="3.4"/>`;
  return svgPath(stroke(x, up(weight.low), x, up(weight.high)), 'whisker') + dot;
}

function winMark(weight: FramingWeight | null, x: number, up: (weight: number) => number): string {
  if (weight === null) return '';
  const square = `<rect class="hollow" x="${short(x - 3)}" y="${short(up(weight.middle) - 3)}" width="6" height="6"/>`;
  return svgPath(stroke(x, up(weight.low), x, up(weight.high)), 'whisker') + square;
}
