import { expect, test } from 'vitest';
import { capitalised } from '../../src/domain/capitalised.ts';

test('puts a capital in front and leaves the rest', () => {
  expect(capitalised('draw 08:30')).toBe('Draw 08:30');
  expect(capitalised('F1s')).toBe('F1s');
  expect(capitalised('')).toBe('');
});
