import type { Day } from '../../domain/day.ts';
import type { Notice } from '../../domain/notice.ts';
import { concernsPeg, noticeState } from '../../domain/notice-state.ts';
import { type Peg, pegKey } from '../../domain/peg.ts';
import type { Content } from '../content.ts';
import type { Fault } from '../fault.ts';
import { faultAt, type Placed } from '../sources/source.ts';

/**
 * A closure without a last day closes its pegs for good, and that is their status: a live notice may not say closed where
 * the record, and with it the map, the draw and every list, still says open.
 */
export function checkClosureStatus({ notices, pegs, settings }: Content): readonly Fault[] {
  const all = notices.map(({ value }) => value);
  const open = pegs.map(({ value }) => value).filter(({ status }) => status === 'open');
  return notices
    .filter(({ value }) => isForGood(value, all, settings.guideDay))
    .flatMap((notice) => closureFault(notice, open));
}

function isForGood(notice: Notice, all: readonly Notice[], guideDay: Day): boolean {
  return notice.kind === 'closure' && notice.until === undefined && noticeState(notice, all, guideDay) === 'live';
}

function closureFault({ value: notice, source }: Placed<Notice>, open: readonly Peg[]): readonly Fault[] {
  const stillOpen = open.filter(({ water, peg }) => concernsPeg(notice, water, pegKey(water, peg)));
  const [first] = stillOpen;
  if (first === undefined) return [];
  return [
    faultAt(source, ['kind'], {
      rule: 'closure-status',
      found: `a closure without a last day over pegs whose records say open: ${namesOf(stillOpen)}`,
      expected: 'a last day (until), or records that say closed',
      mend: `Closed for good: write status: closed, status-since and status-reason in ${first.file}${stillOpen.length > 1 ? ' and the others' : ''}. Closed for a time: give the notice its last day.`,
    }),
  ];
}

/** The first names in full: a closure may be of the whole venue. */
function namesOf(pegs: readonly Peg[]): string {
  const names = pegs.slice(0, 3).map(({ water, peg }) => pegKey(water, peg));
  return pegs.length > 3 ? `${names.join(', ')} and ${pegs.length - 3} more` : names.join(', ');
}
