import { describe, expect, it } from 'vitest';
import { answerFault, type Question } from '../../../src/content/papers/questions.ts';

const which: Question = {
  scope: 'papers',
  of: 'sheet.csv',
  key: 'units',
  ask: 'In what is the weight?',
  evidence: [],
  choices: [
    { value: 'kg', words: 'kilograms' },
    { value: 'lb-oz', words: 'pounds and ounces' },
  ],
};

describe('an answer to a question', () => {
  it('is one of its choices, else is told them all', () => {
    expect(answerFault(which, 'kg')).toBeNull();
    expect(answerFault(which, 'lb-oz')).toBeNull();
    for (const other of ['', 'KG', 'stone']) {
      expect(answerFault(which, other)).toBe('Expected one of kg, lb-oz.');
    }
  });

  it('without choices is what its own check says, and anything where it has none', () => {
    const open: Question = { ...which, choices: null };
    expect(answerFault(open, 'anything')).toBeNull();
    const checked: Question = { ...open, check: (answer) => (answer === '12' ? null : 'Expected 12.') };
    expect([answerFault(checked, '12'), answerFault(checked, '13')]).toEqual([null, 'Expected 12.']);
  });
});
