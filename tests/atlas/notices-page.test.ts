import { describe, expect, it } from 'vitest';
import { noticesOfPeg, noticesOfWater, noticesPage, warningsApart } from '../../src/atlas/notices-page.ts';
import type { Notice } from '../../src/domain/notice.ts';
import { examplePeg, exampleVenue } from '../domain/example-venue.ts';

const notice = (id: string, changes: Partial<Notice> = {}): Notice => ({
  id,
  title: id,
  kind: 'closure',
  from: '2026-11-01',
  waters: [],
  pegs: [],
  markdown: 'Text',
  ...changes,
});

const venue = exampleVenue({
  notices: [
    notice('old', { from: '2026-01-01', until: '2026-02-01' }),
    notice('boards', { pegs: ['pit/1', 'pit/2'] }),
    notice('soon', { from: '2026-12-01', waters: ['pit'] }),
    notice('first', { from: '2026-03-01' }),
    notice('second', { from: '2026-11-10', replaces: 'first' }),
  ],
});

describe('the notices', () => {
  it('are live, upcoming and past by the day of the guide', () => {
    const page = noticesPage(venue);
    expect(page.live.map(({ id }) => id)).toEqual(['second', 'boards']);
    expect(page.upcoming.map(({ id }) => id)).toEqual(['soon']);
    expect(page.past.map(({ id, state }) => [id, state])).toEqual([
      ['first', 'replaced'],
      ['old', 'past'],
    ]);
    expect(page.past[0]?.replacedBy).toBe('second');
  });

  it('say whom they are about', () => {
    expect(noticesPage(venue).live.map(({ about }) => about)).toEqual(['the whole venue', 'The Pit pegs 1, 2']);
    expect(noticesPage(venue).upcoming[0]?.about).toBe('The Pit');
  });

  it('reach the sheet of a peg only when they speak of it', () => {
    expect(noticesOfPeg(venue, 'pit', 'pit/1').live.map(({ id }) => id)).toEqual(['second', 'boards']);
    expect(noticesOfPeg(venue, 'pit', 'pit/3').live.map(({ id }) => id)).toEqual(['second']);
    expect(noticesOfWater(venue, 'lake').upcoming).toEqual([]);
  });

  it('say of a closure that has an end which of its pegs stay closed', () => {
    const of = (until: string | undefined, pegs: Notice['pegs']) => {
      const { live, past } = noticesPage(
        exampleVenue({
          notices: [notice('n', { pegs, ...(until === undefined ? {} : { until }) })],
          pegs: [examplePeg('1', { status: 'closed' }), examplePeg('2')],
        }),
      );
      return [...live, ...past][0]?.staysClosed;
    };
    expect(of('2026-11-10', ['pit/1'])).toBe('notice ended; pegs stay closed');
    expect(of('2026-11-10', ['pit/1', 'pit/2'])).toBe('notice ended; 1 stays closed');
    expect(of('2026-12-10', ['pit/1'])).toBe('pegs stay closed after it');
    expect(of('2026-11-10', ['pit/2'])).toBe(null);
    expect(of(undefined, ['pit/1'])).toBe(null);
  });

  it('say their days: a day alone, a span, or no end', () => {
    const of = (changes: object) => noticesPage(exampleVenue({ notices: [notice('n', changes)] })).live[0]?.days;
    expect(of({ from: '2026-11-21', until: '2026-11-21' })).toBe('on 21 Nov 2026');
    expect(of({ from: '2026-11-09', until: '2026-12-05' })).toBe('from 9 Nov 2026 until 5 Dec 2026');
    expect(of({ from: '2026-11-16' })).toBe('from 16 Nov 2026 until further notice');
  });

  it('set live hazards and closures apart from works, news and what is still to come', () => {
    const { warnings, others } = warningsApart(noticesPage(venue));
    expect(warnings.live.map(({ id }) => id)).toEqual(['second', 'boards']);
    expect(others.live).toEqual([]);
    expect(others.upcoming.map(({ id }) => id)).toEqual(['soon']);
    const works = warningsApart(noticesPage({ ...venue, notices: [notice('works', { kind: 'works' })] }));
    expect(works.warnings.live).toEqual([]);
    expect(works.others.live.map(({ id }) => id)).toEqual(['works']);
  });
});
