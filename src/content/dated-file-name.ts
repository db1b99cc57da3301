import { type Day, isDay } from '../domain/day.ts';
import type { Fault } from './fault.ts';
import { faultOfFile } from './sources/source.ts';
import { fileStem } from './venue-files.ts';

const NAME = /^(\d{4}-\d{2}-\d{2})-[a-z0-9][a-z0-9-]*$/;

/** The day that begins a file's name; null where the name is not a day and a few words. */
export function dayOfName(file: string): Day | null {
  const day = NAME.exec(fileStem(file))?.[1];
  return day !== undefined && isDay(day) ? day : null;
}

/** The fault of a file that is not named by its day. @param example a name of its kind, without its ending */
export function datedNameFaults(file: string, rule: string, example: string): readonly Fault[] {
  if (dayOfName(file) !== null) return [];
  return [
    faultOfFile(file, {
      rule,
      found: `the file name ${fileStem(file)}`,
      expected: `a day and a few words, such as ${example}.md`,
      mend: 'Rename the file: the day, then small letters, digits and hyphens.',
    }),
  ];
}
