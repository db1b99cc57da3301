import { addDays, type Day } from '../../domain/day.ts';
import type { Content } from '../content.ts';
import type { Fault } from '../fault.ts';
import { faultAt } from '../sources/source.ts';
import { shown } from '../sources/text-place.ts';

/**
 * A guide whose day has not come yet reads as fresh for as long as that lasts, and what was closed in between reads as
 * older than it. A day ahead is forgiven: a club may build in the evening for the morning. The days of an invented venue
 * are invented. This alone of all checks asks what day it is, and nothing that is written depends on it.
 */
export function checkGuideDayAhead({ settings, settingsSource }: Content, today: Day | undefined): readonly Fault[] {
  if (today === undefined || settingsSource === null || settings.invented) return [];
  if (settings.guideDay <= addDays(today, 1)) return [];
  return [
    faultAt(settingsSource, ['guide-day'], {
      rule: 'guide-day-ahead',
      found: shown(settings.guideDay),
      expected: `no day after today, ${today} by this computer's clock`,
      mend: 'Write the day of the newest data. Pages count their age from it: one that lies ahead hides how old they are. If the clock is wrong, set it.',
      severity: 'warning',
    }),
  ];
}
