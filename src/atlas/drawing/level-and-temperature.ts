import { evenMarks } from './even-marks.ts';
import { MONTH_LETTERS } from './month-letters.ts';
import { simplifyLine } from './simplify-line.ts';
import { pathThrough, stroke, svgElement, svgPath, svgText } from './svg-markup.ts';

/** One reading of the gauge: day of its year (1 to 366), level above datum in the unit shown, water in degrees Celsius. */
export interface GaugePoint {
  readonly dayOfYear: number;
  readonly level: number | null;
  readonly degreesC: number | null;
}

export interface GaugeYear {
  readonly year: number;
  /** In order of time. */
  readonly points: readonly GaugePoint[];
}

const WIDTH = 360;
const LEFT = 40;
const RIGHT = WIDTH - 8;
const PANEL = 74;
/** Readings further apart than this are not joined: nobody knows what lay between. */
const LONGEST_GAP_DAYS = 45;

/**
 * Level above datum and water temperature through the year, one line a year: the latest in ink, earlier ones fine. The
 * datum is the heavy level stroke of the upper panel.
 */
export function levelAndTemperature(years: readonly GaugeYear[], levelUnit: string, label: string): string {
  const upper = panel(years, (point) => point.level, 14, `level, ${levelUnit} above datum`, true);
  const lower = panel(years, (point) => point.degreesC, 14 + PANEL + 26, 'water, °C', false);
  const bottom = 14 + PANEL * 2 + 26;
  const letters = Array.from({ length: 12 }, (_, month) =>
    svgText(across(15 + month * 30.4), bottom + 16, MONTH_LETTERS.charAt(month), 'middle', 'letter'),
  );
  return svgElement({ width: WIDTH, height: bottom + 22, label, kind: 'gauge-year' }, upper + lower + letters.join(''));
}

function across(dayOfYear: number): number {
  return LEFT + ((RIGHT - LEFT) * dayOfYear) / 366;
}

function panel(
  years: readonly GaugeYear[],
  read: (point: GaugePoint) => number | null,
  top: number,
  name: string,
  withZero: boolean,
): string {
  const values = years.flatMap((year) => year.points.map(read)).filter((value) => value !== null);
  const title = svgText(LEFT, top - 4, name, 'start', 'said');
  if (values.length === 0) return title + svgText(LEFT + 8, top + PANEL / 2, 'no readings', 'start');
  const marks = evenMarks(Math.min(...values, ...(withZero ? [0] : [])), Math.max(...values, ...(withZero ? [0] : [])));
  const [low, high] = [marks[0]!, marks.at(-1)!];
  const up = (value: number) => top + PANEL * (1 - (value - low) / (high - low || 1));
  const grid = marks.map((mark) => {
    const line = svgPath(stroke(LEFT, up(mark), RIGHT, up(mark)), withZero && mark === 0 ? 'par' : 'rule');
    return line + svgText(LEFT - 5, up(mark) + 4, String(mark), 'end');
  });
  const lines = years.map((year, index) => {
    const d = joined(year.points, read, up);
    return svgPath(d, index === years.length - 1 ? 'latest' : 'earlier');
  });
  return title + grid.join('') + lines.join('');
}

function joined(
  points: readonly GaugePoint[],
  read: (point: GaugePoint) => number | null,
  up: (value: number) => number,
): string {
  const runs: (readonly [number, number])[][] = [];
  let lastDay = Number.NEGATIVE_INFINITY;
  for (const point of points) {
    const value = read(point);
    if (value === null) continue;
    if (point.dayOfYear - lastDay > LONGEST_GAP_DAYS) runs.push([]);
    runs.at(-1)!.push([across(point.dayOfYear), up(value)]);
    lastDay = point.dayOfYear;
  }
  return runs
    .map((run) => (run.length === 1 ? pathThrough([run[0]!, run[0]!]) : pathThrough(simplifyLine(run, 0.3))))
    .join('');
}
