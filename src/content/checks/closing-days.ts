import type { Day } from '../../domain/day.ts';
import { isUnsafePlatform } from '../../domain/peg-facts.ts';
import type { Content } from '../content.ts';
import type { Fault } from '../fault.ts';
import { type FieldPath, faultAt, type Source } from '../sources/source.ts';
import { shown } from '../sources/text-place.ts';

/**
 * A closing has a day, and the guide's day is never before it: else the guide made before the closing and the one made
 * after it state the same day, and a printed copy cannot be told from what took its place. A closing written before this
 * was asked is read as it is, with a warning.
 */
export function checkClosingDays({ pegs, settings, settingsSource }: Content): readonly Fault[] {
  return pegs.flatMap(({ value: peg, source }) => {
    const { status, statusSince, platform } = peg;
    if (status === 'closed' && statusSince === undefined) return [undated(source, ['status'])];
    const isLater = status === 'closed' && statusSince !== undefined && statusSince > settings.guideDay;
    if (isLater && settingsSource !== null) return [later(source, statusSince, settings.guideDay)];
    const isUnsafe = status === 'open' && isUnsafePlatform(platform) && platform?.keptOpen === undefined;
    return isUnsafe && platform?.inspectedOn === undefined ? [unseen(source, conditionPath(source))] : [];
  });
}

function undated(source: Source, path: FieldPath): Fault {
  return faultAt(source, path, {
    rule: 'closing-day',
    found: 'a closed peg without status-since',
    expected: 'the day it was closed, so that the guide can say how long it has been',
    mend: 'Write status-since: YYYY-MM-DD below status. For a peg closed just now, the day of the closing, and set guide-day in venue.md to it or later; for an old closing whose day nobody knows, the first day it is known to have been closed.',
    severity: 'warning',
  });
}

function later(source: Source, since: Day, guideDay: Day): Fault {
  return faultAt(source, ['status-since'], {
    rule: 'closing-later',
    found: shown(since),
    expected: `no day after ${guideDay}, the guide-day of venue.md: a guide that knows this closing must not read like one from before it`,
    mend: `Set guide-day in venue.md to ${since} or later. For a closing planned ahead, leave status: open and write a notice of kind closure with from: ${since}.`,
  });
}

function unseen(source: Source, path: FieldPath): Fault {
  return faultAt(source, path, {
    rule: 'closing-day',
    found: 'an unsafe platform without inspected-on, which closes the peg from no stated day',
    expected: 'the day it was found unsafe',
    mend: 'Write inspected-on: YYYY-MM-DD in platform, and set guide-day in venue.md to that day or later.',
    severity: 'warning',
  });
}

/** Where the platforms are a list, the words stand in one of its entries. */
function conditionPath(source: Source): FieldPath {
  return source.writtenAt(['platform', 'condition']) === undefined ? ['platform'] : ['platform', 'condition'];
}
