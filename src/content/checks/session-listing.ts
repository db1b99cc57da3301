import type { Content } from '../content.ts';
import type { Fault } from '../fault.ts';
import { faultAt } from '../sources/source.ts';

/** Only an event that lists no more than its frame has unlisted sessions, and no event has more who fished than it says. */
export function checkSessionListing({ sessions, events }: Content): readonly Fault[] {
  const listings = new Map(events.map(({ value }) => [value.id, value.listing]));
  const fished = new Map<string, number>();
  const faults: Fault[] = [];
  for (const { value, source } of sessions) {
    if (value.status !== 'absent') fished.set(value.event, (fished.get(value.event) ?? 0) + 1);
    if (value.status !== 'unlisted' || listings.get(value.event) !== 'full') continue;
    faults.push(
      faultAt(source(), ['status'], {
        rule: 'status-listing',
        found: 'unlisted',
        expected: `weighed, blank or dnw: ${value.event} lists every weight`,
        mend: 'Correct the status, or write the listing frame in events.csv.',
      }),
    );
  }
  for (const { value: event, source } of events) {
    const rows = fished.get(event.id) ?? 0;
    if (event.fished === undefined || rows <= event.fished) continue;
    faults.push(
      faultAt(source(), ['fished'], {
        rule: 'event-fished',
        found: String(event.fished),
        expected: `at least ${rows}, the sessions logged for it`,
        mend: 'Correct the number, or leave the cell empty.',
      }),
    );
  }
  return faults;
}
