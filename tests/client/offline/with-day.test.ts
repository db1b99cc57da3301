import { expect, it } from 'vitest';
import { withDay } from '../../../src/client/offline/with-day.ts';

it('moves the day of the guide on wherever a file states it, and leaves another day that is the same by chance', () => {
  const page = (day: string, words: string) =>
    `<body data-guide-day="${day}">Data to <time datetime="${day}">${words}</time>, none closed on ${words}. By the gauge on 21 Nov 2026 ` +
    `{"asOf":"${day}","checkedOn":"2026-11-21"} round k7q2,open,${day} Data of ${words}.`;
  expect(withDay(page('2026-11-21', '21 Nov 2026'), '2026-11-21', '2026-11-28')).toBe(
    page('2026-11-28', '28 Nov 2026'),
  );
});
