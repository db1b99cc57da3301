import fc from 'fast-check';
import { expect, it } from 'vitest';
import { chanceWords } from '../../src/atlas/chance-words.ts';
import { inEnglish } from '../../src/words/say.ts';

it('says a chance as people say it', () => {
  expect(
    [0.001, 0.1667, 0.25, 0.34, 0.36, 0.45, 0.68, 0.96, 0.99].map((chance) => chanceWords(chance, inEnglish)),
  ).toEqual([
    'less than once in 50',
    'once in 6',
    'once in 4',
    'once in 3',
    '4 times in 10',
    '5 times in 10',
    '7 times in 10',
    '19 times in 20',
    'nearly always',
  ]);
});

it('is never further from the chance than its words allow', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.02, max: 0.97, noNaN: true }), (chance) => {
      const [, times, once, whole] = /(?:(\d+) times|(once)) in (\d+)/.exec(chanceWords(chance, inEnglish))!;
      const part = once === undefined ? Number(times) : 1;
      expect(Math.abs(part / Number(whole) - chance)).toBeLessThan(Math.max(0.051, chance * 0.25));
    }),
  );
});

it('never tells the larger of two chances as the smaller', () => {
  const told = (chance: number) => {
    const words = chanceWords(chance, inEnglish);
    if (words === 'less than once in 50') return 0;
    if (words === 'nearly always') return 1;
    const [, times, once, whole] = /(?:(\d+) times|(once)) in (\d+)/.exec(words)!;
    return (once === undefined ? Number(times) : 1) / Number(whole);
  };
  const steps = Array.from({ length: 2001 }, (_, i) => told(i / 2000));
  expect(steps).toEqual([...steps].sort((a, b) => a - b));
});
