import type { Units } from '../domain/bag.ts';
import { isDay } from '../domain/day.ts';
import type { Match } from '../domain/match.ts';
import type { Fault } from './fault.ts';
import { readBody } from './read-body.ts';
import { type Reading, reading } from './reading.ts';
import { matchSchema } from './schemas/match-schema.ts';
import { readFieldsLeniently } from './schemas/read-fields.ts';
import { readMarkdownRecord } from './sources/front-matter.ts';
import { faultAt, faultOfFile, type Placed } from './sources/source.ts';
import { fileStem } from './venue-files.ts';

const NAME = /^(\d{4}-\d{2}-\d{2})-[a-z0-9][a-z0-9-]*$/;

/** Makes the reader of `matches/<date>-<slug>.md` for a venue's units. */
export function matchReader(units: Units): (file: string, text: string) => Reading<Placed<Match> | null> {
  const schema = matchSchema(units);
  return (file, text) => {
    const { record, faults } = readMarkdownRecord(file, text);
    if (record === null) return reading(null, faults);
    const { source, body } = record;
    const read = readFieldsLeniently(schema, source.value, source);
    const named = NAME.exec(fileStem(file))?.[1];
    const all = [...faults, ...nameFaults(file, named), ...read.faults, ...readBody(record).faults];
    if (read.value === null) return reading(null, all);
    if (named !== undefined && isDay(named) && named !== read.value.day) {
      all.push(
        faultAt(source, ['date'], {
          rule: 'match-day',
          found: read.value.day,
          expected: `${named}, as the file is named`,
          mend: 'Correct the date, or rename the file.',
        }),
      );
    }
    return reading({ value: { ...read.value, id: fileStem(file), markdown: body.trim() }, source }, all);
  };
}

function nameFaults(file: string, day: string | undefined): readonly Fault[] {
  if (day !== undefined && isDay(day)) return [];
  return [
    faultOfFile(file, {
      rule: 'match-name',
      found: `the file name ${fileStem(file)}`,
      expected: 'a day and a few words, such as 2026-12-06-winter-three.md',
      mend: 'Rename the file: the day, then small letters, digits and hyphens.',
    }),
  ];
}
