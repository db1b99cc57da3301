import { readFileSync } from 'node:fs';
import type { SeasonalNote } from '../../../src/domain/peg.ts';
import { monthsOfHeading } from '../../../src/domain/season.ts';

/** What someone wrote by hand about a peg. */
export interface PegWriting {
  /** Takes the place of the line made from the drawing. */
  readonly where?: string;
  readonly notes: readonly SeasonalNote[];
}

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
      return { heading: heading.trim(), months: monthsOfHeading(heading.trim()), markdown: markdown.trim() };
    }),
  ];
}

function cutAt(text: string, mark: string): [before: string, after: string] {
  const at = text.indexOf(mark);
  return at < 0 ? [text, ''] : [text.slice(0, at), text.slice(at + mark.length)];
}
