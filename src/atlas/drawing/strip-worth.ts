import { whenClosed } from './peg-mark.ts';
import { ratioScale } from './ratio-scale.ts';
import type { StripPeg } from './strip-peg.ts';
import { escapeMarkup, short, stroke, svgPath } from './svg-markup.ts';
import type { AxisWorth } from './worth-axis.ts';

const WORTH_TOP = 8;
export const WORTH_BOTTOM = 84;
const STOP = 3;

/** The worth axis of a strip, upright: half par as far below par as twice it lies above. */
export const worthScale = ratioScale(0.4, 2.5, WORTH_BOTTOM, WORTH_TOP);

/**
 * What each peg is worth, month by month, as a dot and an upright whisker; the page shows the month chosen. A peg that is
 * closed on every day has none, one that closes or opens on some day has one on its open days alone.
 */
export function stripWorths(pegs: readonly StripPeg[], xs: readonly number[], nowMonth: number): string {
  const steady = pegs.flatMap(({ worths, dated }, i) =>
    worths === null || dated !== undefined ? [] : [{ x: xs[i]!, worths }],
  );
  const changing = pegs.flatMap(({ worths, dated, closed }, i) => {
    if (worths === null || dated === undefined) return [];
    const facts = `data-verdict="${escapeMarkup(dated)}"${whenClosed(false, closed)}`;
    return [`<g ${facts}>${monthsOf([{ x: xs[i]!, worths }], nowMonth)}</g>`];
  });
  return monthsOf(steady, nowMonth) + changing.join('');
}

interface Placed {
  readonly x: number;
  readonly worths: readonly (AxisWorth | null)[];
}

function monthsOf(placed: readonly Placed[], nowMonth: number): string {
  return Array.from({ length: 12 }, (_, index) => {
    const marks = placed.flatMap(({ x, worths }) => {
      const shown = worths[index] ?? null;
      return shown === null ? [] : [{ x, shown }];
    });
    if (marks.length === 0) return '';
    const now = index + 1 === nowMonth ? ' now' : '';
    const groups = (['thin', 'fair', 'solid'] as const).map((evidence) => ofEvidence(marks, evidence));
    return `<g class="of-month${now}" data-month="${index + 1}">${groups.join('')}</g>`;
  }).join('');
}

function ofEvidence(
  marks: readonly { readonly x: number; readonly shown: AxisWorth }[],
  evidence: AxisWorth['evidence'],
): string {
  const some = marks.filter(({ shown }) => shown.evidence === evidence);
  if (some.length === 0) return '';
  const whiskers = some.map(({ x, shown }) => whisker(x, shown)).join('');
  const dots = some.map(({ x, shown }) => {
    const y = Math.round(worthScale.place(shown.value).at);
    return `<circle cx="${short(x)}" cy="${y}" r="4"/>`;
  });
  return `<g class="${evidence}">${svgPath(whiskers, 'whisker')}${dots.join('')}</g>`;
}

/** A whisker that leaves the axis ends in an arrow head, as on the worth axis of a sheet. */
function whisker(x: number, { low, high }: AxisWorth): string {
  const [below, above] = [worthScale.place(low), worthScale.place(high)];
  const [y1, y2] = [Math.round(below.at), Math.round(above.at)];
  const end = (y: number, cut: boolean, back: number) =>
    cut ? `M${short(x - STOP)},${y + back}l${STOP},${-back}l${STOP},${back}` : stroke(x - STOP, y, x + STOP, y);
  return stroke(x, y1, x, y2) + end(y1, below.cut !== 'no', -STOP) + end(y2, above.cut !== 'no', STOP);
}
