import { isDay } from '../domain/day.ts';
import type { Notice } from '../domain/notice.ts';
import type { Fault } from './fault.ts';
import { readBody } from './read-body.ts';
import { type Reading, reading } from './reading.ts';
import { NoticeSchema } from './schemas/notice-schema.ts';
import { readFieldsLeniently } from './schemas/read-fields.ts';
import { readMarkdownRecord } from './sources/front-matter.ts';
import { faultOfFile, type Placed } from './sources/source.ts';
import { fileStem } from './venue-files.ts';

const NAME = /^(\d{4}-\d{2}-\d{2})-[a-z0-9][a-z0-9-]*$/;

/** Reads `notices/<date>-<slug>.md`. */
export function readNotice(file: string, text: string): Reading<Placed<Notice> | null> {
  const { record, faults } = readMarkdownRecord(file, text);
  if (record === null) return reading(null, faults);
  const { source, body } = record;
  const read = readFieldsLeniently(NoticeSchema, source.value, source);
  const all = [...faults, ...nameFaults(file), ...read.faults, ...readBody(record).faults];
  if (read.value === null) return reading(null, all);
  return reading({ value: { ...read.value, id: fileStem(file), markdown: body.trim() }, source }, all);
}

function nameFaults(file: string): readonly Fault[] {
  const day = NAME.exec(fileStem(file))?.[1];
  if (day !== undefined && isDay(day)) return [];
  return [
    faultOfFile(file, {
      rule: 'notice-name',
      found: `the file name ${fileStem(file)}`,
      expected: 'a day and a few words, such as 2026-11-02-boards-off.md',
      mend: 'Rename the file: the day, then small letters, digits and hyphens.',
    }),
  ];
}
