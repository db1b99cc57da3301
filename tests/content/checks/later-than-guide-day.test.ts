import { expect, test } from 'vitest';
import { FILE, messagesOf, replacing } from '../small-venue.ts';

test('warns of what is dated after the day of the data, wherever it stands', () => {
  expect(messagesOf({ [FILE.venue]: replacing('2026-11-21', '2026-03-15') })).toMatchInlineSnapshot(`
    [
      "gauge/mill-pond.csv:2:1 warning Unexpected "2026-04-01" for date, expected no day after 2026-03-15, the guide-day of venue.md. Correct it, or move guide-day on to the day of the newest data. (day-later)",
      "gauge/mill-pond.csv:3:1 warning Unexpected "2026-11-12" for date, expected no day after 2026-03-15, the guide-day of venue.md. Correct it, or move guide-day on to the day of the newest data. (day-later)",
      "pegs/mill-pond/1.md:14:17 warning Unexpected "2026-11-01" for hazards[0].checked-on, expected no day after 2026-03-15, the guide-day of venue.md. Correct it, or move guide-day on to the day of the newest data. (day-later)",
      "pegs/mill-pond/2.md:14:17 warning Unexpected "2026-11-01" for hazards[0].checked-on, expected no day after 2026-03-15, the guide-day of venue.md. Correct it, or move guide-day on to the day of the newest data. (day-later)",
      "pegs/mill-pond/10.md:14:17 warning Unexpected "2026-11-01" for hazards[0].checked-on, expected no day after 2026-03-15, the guide-day of venue.md. Correct it, or move guide-day on to the day of the newest data. (day-later)",
      "rounds/2026-11-12-k7q2.csv:1:1 warning Unexpected "2026-11-12", expected no day after 2026-03-15, the guide-day of venue.md. Correct it, or move guide-day on to the day of the newest data. (day-later)",
      "sessions/2026/events.csv:2:22 warning Unexpected "2026-05-02" for date, expected no day after 2026-03-15, the guide-day of venue.md. Correct it, or move guide-day on to the day of the newest data. (day-later)",
      "soundings/mill-pond.csv:2:24 warning Unexpected "2026-04-01" for date, expected no day after 2026-03-15, the guide-day of venue.md. Correct it, or move guide-day on to the day of the newest data. (day-later)",
      "soundings/mill-pond.csv:3:18 warning Unexpected "2026-04-01" for date, expected no day after 2026-03-15, the guide-day of venue.md. Correct it, or move guide-day on to the day of the newest data. (day-later)",
    ]
  `);
});
