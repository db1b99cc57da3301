import { MONTHS, type Month, monthName, monthOf } from '../domain/day.ts';
import type { PegKey } from '../domain/peg.ts';
import type { Atlas } from './atlas.ts';
import { worthAxis } from './drawing/worth-axis.ts';
import { yearBars } from './drawing/year-bars.ts';
import { sessionsWords, type WorthWords, worthWords } from './worth-words.ts';

/** What is known of a peg's worth in one month. */
export interface PegMonthWorth {
  readonly month: Month;
  readonly name: string;
  readonly known: WorthWords | null;
  /** `14 sessions here in November, evidence fair`. */
  readonly behind: string;
}

/** A peg's worth by month, ready to be placed. */
export interface WorthByMonth {
  readonly months: readonly PegMonthWorth[];
  /** The month of the guide's day. */
  readonly nowMonth: Month;
  /** Dot and whisker of every month on one axis; a page shows that of the month chosen. */
  readonly axis: string;
  readonly year: string;
}

/** A peg's worth of the total bag by month; null where the log rates no peg at all. */
export function worthByMonth(atlas: Atlas, key: PegKey): WorthByMonth | null {
  const months = monthsOf(atlas, key);
  if (months.every(({ known }) => known === null)) return null;
  const nowMonth = monthOf(atlas.venue.settings.guideDay);
  const peg = atlas.pegsByKey.get(key);
  const shown = months.map(({ known }) => known?.shown ?? null);
  const label = `Worth of peg ${peg?.peg ?? key} by month: ${yearSpan(months)}. Choose a month above for its figures.`;
  return {
    months,
    nowMonth,
    axis: axisOf(months, nowMonth),
    year: yearBars(shown, nowMonth, label),
  };
}

function axisOf(months: readonly PegMonthWorth[], nowMonth: Month): string {
  const marks = months.flatMap(({ month, known }) => {
    const className = month === nowMonth ? 'of-month now' : 'of-month';
    return known === null ? [] : [{ shown: known.shown, className, mark: `data-month="${month}"` }];
  });
  return worthAxis(marks);
}

function monthsOf(atlas: Atlas, key: PegKey): readonly PegMonthWorth[] {
  const rows = atlas.monthsByPeg.get(key) ?? [];
  return MONTHS.map((month) => {
    const name = monthName(month);
    const row = rows.find((candidate) => candidate.month === month);
    if (row === undefined) return { month, name, known: null, behind: '' };
    const known = worthWords(
      { value: row.worth, low: row.low80, high: row.high80, evidence: row.evidence },
      row.sessions,
    );
    const behind = `${sessionsWords(row.sessions)} here in ${name}, evidence ${row.evidence}`;
    return { month, name, known, behind };
  });
}

/** "highest August 1.36, lowest January 0.74 par": the table beside the drawing has every figure. */
function yearSpan(months: readonly PegMonthWorth[]): string {
  const known = months.flatMap((month) => (month.known === null ? [] : [{ ...month, known: month.known }]));
  const ordered = known.sort((a, b) => b.known.shown.value - a.known.shown.value);
  const [highest, lowest] = [ordered[0]!, ordered.at(-1)!];
  if (highest === lowest) return `${highest.name} ${highest.known.middle} par`;
  return `highest ${highest.name} ${highest.known.middle}, lowest ${lowest.name} ${lowest.known.middle} par`;
}
