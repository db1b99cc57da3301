import { describe, expect, it } from 'vitest';
import type { Notice } from '../../src/domain/notice.ts';
import { concernsPeg, concernsWater, noticeState, replacedFrom } from '../../src/domain/notice-state.ts';

const notice = (id: string, changes: Partial<Notice> = {}): Notice => ({
  id,
  title: id,
  kind: 'works',
  from: '2026-11-02',
  waters: [],
  pegs: [],
  markdown: '',
  ...changes,
});

describe('a bank notice', () => {
  it('is upcoming before its first day, live on it and on its last, past after', () => {
    const boards = notice('boards', { until: '2026-11-10' });
    expect(noticeState(boards, [boards], '2026-11-01')).toBe('upcoming');
    expect(noticeState(boards, [boards], '2026-11-02')).toBe('live');
    expect(noticeState(boards, [boards], '2026-11-10')).toBe('live');
    expect(noticeState(boards, [boards], '2026-11-11')).toBe('past');
  });

  it('holds without end where it names none', () => {
    expect(noticeState(notice('a'), [], '2036-01-01')).toBe('live');
  });

  it('gives way from the first day of the one that replaces it, not before', () => {
    const first = notice('first');
    const second = notice('second', { from: '2026-11-20', replaces: 'first' });
    expect(noticeState(first, [first, second], '2026-11-19')).toBe('live');
    expect(noticeState(first, [first, second], '2026-11-20')).toBe('replaced');
    expect(replacedFrom(first, [first, second])).toBe('2026-11-20');
    expect(replacedFrom(second, [first, second])).toBeNull();
  });

  it('speaks of the whole venue, of a water, or of named pegs', () => {
    expect(concernsPeg(notice('all'), 'pit', 'pit/1')).toBe(true);
    expect(concernsPeg(notice('water', { waters: ['pit'] }), 'pit', 'pit/1')).toBe(true);
    expect(concernsPeg(notice('water', { waters: ['lake'] }), 'pit', 'pit/1')).toBe(false);
    expect(concernsPeg(notice('peg', { waters: ['pit'], pegs: ['pit/2'] }), 'pit', 'pit/1')).toBe(false);
    expect(concernsWater(notice('peg', { pegs: ['pit/2'] }), 'pit')).toBe(true);
    expect(concernsWater(notice('peg', { pegs: ['pit/2'] }), 'lake')).toBe(false);
  });
});
