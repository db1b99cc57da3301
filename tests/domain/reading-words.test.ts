import { expect, it } from 'vitest';
import { ageWords, overdueWords } from '../../src/domain/reading-words.ts';
import { sayIn } from '../../src/words/say.ts';

const AGES = sayIn('en')('frame.ages');

it('says how old a guide is, from its first day on', () => {
  expect(ageWords('2026-11-21', '2026-11-21', AGES)).toBe('');
  expect(ageWords('2026-11-21', '2026-11-22', AGES)).toBe(', 1 day old');
  expect(ageWords('2026-11-21', '2026-12-21', AGES)).toBe(', 30 days old');
  expect(ageWords('2026-11-21', '2027-03-21', AGES)).toBe(', 3 months old');
  expect(ageWords('2026-11-21', '2029-01-21', AGES)).toBe(', 2 years old');
});

it('says it in the language of the page', () => {
  expect(ageWords('2026-11-21', '2026-11-27', sayIn('cy')('frame.ages'))).toBe(', 6 diwrnod oed');
});

it('says nothing of age on a phone whose clock is behind the guide', () => {
  expect(ageWords('2026-11-21', '2025-01-01', AGES)).toBe('');
});

it('calls a check out of date from the day after it was due', () => {
  expect(overdueWords('2026-10-23', '2026-10-23')).toBe('');
  expect(overdueWords('2026-10-23', '2026-10-24')).toBe(', check overdue by 1 day');
  expect(overdueWords('2026-10-23', '2026-11-21')).toBe(', check overdue by 29 days');
  expect(overdueWords('2026-10-23', '2026-11-21', 'late')).toBe(', late by 29 days');
});
