import { MONTHS, type Month, monthName, monthOf } from '../domain/day.ts';
import type { PegKey } from '../domain/peg.ts';
import type { Atlas } from './atlas.ts';
import { returnAxis } from './drawing/return-axis.ts';
import { yearBars } from './drawing/year-bars.ts';
import { type ReturnWords, returnWords, sessionsWords } from './return-words.ts';

/** What is known of a peg's return in one month. */
export interface PegMonthReturn {
  readonly month: Month;
  readonly name: string;
  readonly known: ReturnWords | null;
  /** `14 sessions here in November, evidence fair`. */
  readonly behind: string;
}

/** A peg's return by month, ready to be placed. */
export interface PegReturns {
  readonly months: readonly PegMonthReturn[];
  /** The month of the guide's day. */
  readonly nowMonth: Month;
  /** Dot and whisker of every month on one axis; a page shows that of the month chosen. */
  readonly axis: string;
  readonly year: string;
}

/** A peg's return of the total bag by month; null where the log rates no peg at all. */
export function pegReturns(atlas: Atlas, key: PegKey): PegReturns | null {
  const months = monthsOf(atlas, key);
  if (months.every(({ known }) => known === null)) return null;
  const nowMonth = monthOf(atlas.venue.settings.guideDay);
  const peg = atlas.pegsByKey.get(key);
  const shown = months.map(({ known }) => known?.shown ?? null);
  const label = `Return of peg ${peg?.peg ?? key} by month: ${yearSpan(months)}. Choose a month above for its figures.`;
  return {
    months,
    nowMonth,
    axis: axisOf(months, nowMonth),
    year: yearBars(shown, nowMonth, label),
  };
}

function axisOf(months: readonly PegMonthReturn[], nowMonth: Month): string {
  const marks = months.flatMap(({ month, known }) => {
    const className = month === nowMonth ? 'of-month now' : 'of-month';
    return known === null ? [] : [{ shown: known.shown, className, mark: `data-month="${month}"` }];
  });
  return returnAxis(marks);
}

function monthsOf(atlas: Atlas, key: PegKey): readonly PegMonthReturn[] {
  const rows = atlas.monthsByPeg.get(key) ?? [];
  return MONTHS.map((month) => {
    const name = monthName(month);
    const row = rows.find((candidate) => candidate.month === month);
    if (row === undefined) return { month, name, known: null, behind: '' };
    const known = returnWords(
      { value: row.return, low: row.low80, high: row.high80, evidence: row.evidence },
      row.sessions,
    );
    const behind = `${sessionsWords(row.sessions)} here in ${name}, evidence ${row.evidence}`;
    return { month, name, known, behind };
  });
}

/** "highest August 1.36, lowest January 0.74 par": the table beside the drawing has every figure. */
function yearSpan(months: readonly PegMonthReturn[]): string {
  const known = months.flatMap((month) => (month.known === null ? [] : [{ ...month, known: month.known }]));
  const ordered = known.sort((a, b) => b.known.shown.value - a.known.shown.value);
  const [highest, lowest] = [ordered[0]!, ordered.at(-1)!];
  if (highest === lowest) return `${highest.name} ${highest.known.middle} par`;
  return `highest ${highest.name} ${highest.known.middle}, lowest ${lowest.name} ${lowest.known.middle} par`;
}
