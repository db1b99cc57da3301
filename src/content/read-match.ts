import type { Units } from '../domain/bag.ts';
import type { Match } from '../domain/match.ts';
import { datedNameFaults, dayOfName } from './dated-file-name.ts';
import { readRecord } from './read-record.ts';
import { type Reading, reading } from './reading.ts';
import { matchSchema } from './schemas/match-schema.ts';
import { faultAt, type Placed } from './sources/source.ts';
import { fileStem } from './venue-files.ts';

/** Makes the reader of `matches/<date>-<slug>.md` for a venue's units. */
export function matchReader(units: Units): (file: string, text: string) => Reading<Placed<Match> | null> {
  const schema = matchSchema(units);
  return (file, text) => {
    const ofName = datedNameFaults(file, 'match-name', '2026-12-06-winter-three');
    const make = (fields: Omit<Match, 'id' | 'markdown'>, markdown: string) => ({
      ...fields,
      id: fileStem(file),
      markdown,
    });
    const { value, faults } = readRecord(file, text, schema, make, ofName);
    const named = dayOfName(file);
    if (value === null || named === null || named === value.value.day) return reading(value, faults);
    const fault = faultAt(value.source, ['date'], {
      rule: 'match-day',
      found: value.value.day,
      expected: `${named}, as the file is named`,
      mend: 'Correct the date, or rename the file.',
    });
    return reading(value, [...faults, fault]);
  };
}
