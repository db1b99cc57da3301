import { describe, expect, it } from 'vitest';
import { clockDoubt } from '../../../src/client/round/clock-doubt.ts';

const guideDay = '2026-11-21';
const at = (day: string) => new Date(`${day}T12:00:00`);

describe('the clock of a phone', () => {
  it('is believed on the guide’s day and after', () => {
    expect(clockDoubt(at('2026-11-21'), { guideDay })).toBeNull();
    expect(clockDoubt(at('2027-06-01'), { guideDay })).toBeNull();
  });

  it('is doubted before the guide’s day, and long after it', () => {
    expect(clockDoubt(at('2019-03-03'), { guideDay })).toBe(
      'This phone’s clock says 3 Mar 2019, and the guide on it has data to 21 Nov 2026.',
    );
    expect(clockDoubt(at('2028-03-03'), { guideDay })).toContain('over a year old');
  });

  it('is doubted where the last position, or an earlier entry, says otherwise', () => {
    const now = at('2026-11-26');
    expect(clockDoubt(now, { guideDay, fixAt: now.getTime() - 3_600_000 })).toBeNull();
    expect(clockDoubt(now, { guideDay, fixAt: at('2026-11-29').getTime() })).toContain('taken on 29 Nov 2026');
    expect(clockDoubt(now, { guideDay, lastNoted: '2026-11-27' })).toContain('noted here on 27 Nov 2026');
  });
});
