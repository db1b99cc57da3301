import { MONTHS, type Month } from '../domain/day.ts';
import type { SeasonalNote } from '../domain/peg.ts';
import { markdownHtml } from './markdown-html.ts';

/** What is known of a peg under one heading, as HTML. */
export interface NoteView {
  readonly heading: string;
  /** Months it speaks of, for the script of the reading day: `3 4 5`. */
  readonly months: string;
  /** Whether it speaks of the present month. */
  readonly isNow: boolean;
  readonly html: string;
}

export interface PegNotes {
  /** What holds at any time: text without a heading, under `All year`, or under a heading that is no season. */
  readonly always: readonly NoteView[];
  /** Seasonal notes, those of the present month first, then by the calendar. */
  readonly seasonal: readonly NoteView[];
}

/** The notes of a record in the order in which a reader in `month` wants them. */
export function pegNotes(notes: readonly SeasonalNote[], month: Month): PegNotes {
  const isSeason = ({ months }: SeasonalNote) => months.length > 0 && months.length < MONTHS.length;
  const view = (note: SeasonalNote): NoteView => ({
    heading: note.heading,
    months: note.months.join(' '),
    isNow: note.months.includes(month),
    html: markdownHtml(note.markdown, 4),
  });
  const written = notes.filter(({ markdown }) => markdown.trim() !== '');
  const seasonal = written.filter(isSeason).map(view);
  return {
    always: written.filter((note) => !isSeason(note)).map(view),
    seasonal: [...seasonal.filter(({ isNow }) => isNow), ...seasonal.filter(({ isNow }) => !isNow)],
  };
}
