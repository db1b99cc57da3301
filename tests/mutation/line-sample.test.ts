import { describe, expect, test } from 'vitest';
import { lineSample } from './line-sample.ts';

const text = `import { a } from './a.ts';

/** Says how deep it is. */
export function depth(level: number): number {
  // The datum.
  return (
    a - level
  );
}
export type { Depth } from './depth.ts';
`;
const files = [
  { path: 'src/b.ts', text },
  { path: 'src/a.ts', text },
];

describe('lines drawn for mutants', () => {
  test('are of those that can hold one, each at most once', () => {
    const all = lineSample(files, 1000, 1);
    expect(all.toSorted()).toEqual([
      'src/a.ts:4-4',
      'src/a.ts:6-6',
      'src/a.ts:7-7',
      'src/b.ts:4-4',
      'src/b.ts:6-6',
      'src/b.ts:7-7',
    ]);
  });

  test('are the same for the same seed, in whatever order the files come, and more of them begin with the fewer', () => {
    const four = lineSample(files, 4, 7);
    expect(lineSample(files.toReversed(), 4, 7)).toEqual(four);
    expect(lineSample(files, 2, 7)).toEqual(four.slice(0, 2));
    const ofSeeds = [1, 2, 3, 4, 5].map((seed) => lineSample(files, 4, seed).join());
    expect(new Set(ofSeeds).size).toBeGreaterThan(1);
  });

  test('are drawn with the same chance each', () => {
    // Seeds one after another begin alike: what shuffles six lines in five draws wants them scattered.
    const counts = new Map<string, number>();
    for (let seed = 0; seed < 3000; seed++) {
      const [line = ''] = lineSample(files, 1, Math.imul(seed, 0x9e3779b1));
      counts.set(line, (counts.get(line) ?? 0) + 1);
    }
    // 500 expected of each of six, standard deviation 20.4.
    expect(counts.size).toBe(6);
    for (const count of counts.values()) expect(Math.abs(count - 500)).toBeLessThan(5 * 20.4);
  });
});
