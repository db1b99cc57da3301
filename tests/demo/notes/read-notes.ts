import { readFileSync } from 'node:fs';
import { MONTH_NAMES, MONTHS, type Month } from '../../../src/domain/day.ts';
import type { SeasonalNote } from '../../../src/domain/peg.ts';

/** What someone wrote by hand about a peg. */
export interface PegWriting {
  /** Takes the place of the line made from the drawing. */
  readonly where?: string;
  readonly notes: readonly SeasonalNote[];
}

const SEASONS: Readonly<Record<string, readonly Month[]>> = {
  Spring: [3, 4, 5],
  Summer: [6, 7, 8],
  Autumn: [9, 10, 11],
  Winter: [12, 1, 2],
  'All year': MONTHS,
};

/** Reads one water's hand-written notes: `# peg`, an optional `where:` line, text, and `## season` headings. */
export function readNotes(water: string): ReadonlyMap<string, PegWriting> {
  const text = readFileSync(new URL(`${water}.md`, import.meta.url), 'utf8');
  const pegs = text.split(/^# /m).slice(1);
  return new Map(
    pegs.map((section) => {
      const [peg, rest] = cutAt(section, '\n');
      const where = /^where: (.+)\n/.exec(rest.trimStart());
      const body = where === null ? rest : rest.trimStart().slice(where[0].length);
      return [peg.trim(), { ...(where === null ? {} : { where: where[1]! }), notes: notesOf(body) }];
    }),
  );
}

function notesOf(body: string): SeasonalNote[] {
  const [opening, ...sections] = body.split(/^## /m);
  const first = opening!.trim();
  return [
    ...(first === '' ? [] : [{ heading: '', months: [], markdown: first }]),
    ...sections.map((section) => {
      const [heading, markdown] = cutAt(section, '\n');
      return { heading: heading.trim(), months: monthsOf(heading.trim()), markdown: markdown.trim() };
    }),
  ];
}

/** The months a heading names: a season, a month, or a range of months that may run over the year's end. */
function monthsOf(heading: string): readonly Month[] {
  const season = SEASONS[heading];
  if (season !== undefined) return season;
  const [first, last] = heading.split(' to ').map((name) => MONTH_NAMES.indexOf(name));
  if (first === undefined || first < 0 || last === -1) throw new RangeError(`"${heading}" names no months`);
  const count = ((last ?? first) - first + 12) % 12;
  return Array.from({ length: count + 1 }, (_, i) => (((first + i) % 12) + 1) as Month);
}

function cutAt(text: string, mark: string): [before: string, after: string] {
  const at = text.indexOf(mark);
  return at < 0 ? [text, ''] : [text.slice(0, at), text.slice(at + mark.length)];
}
