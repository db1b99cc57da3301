import { expect, it } from 'vitest';
import { onLeaves } from '../../../src/commands/print/on-leaves.ts';

it('leaves parts where they are while every sheet begins on the front of a leaf', () => {
  const pages = [
    ['safety', 2],
    ['peg 1', 5],
    ['peg 2', 7],
    ['index', 9],
  ] as const;
  expect(onLeaves(pages, new Set(['peg 1', 'peg 2']))).toEqual({ numbers: pages, emptyBefore: [] });
});

it('puts an empty page before a sheet that would begin on a back, and moves all that follows', () => {
  // Sheet 1 has three pages: sheet 2 would begin on a back again.
  const pages = [
    ['water', 3],
    ['peg 1', 4],
    ['peg 2', 7],
    ['peg 3', 9],
    ['index', 11],
  ] as const;
  expect(onLeaves(pages, new Set(['peg 1', 'peg 2', 'peg 3']))).toEqual({
    numbers: [
      ['water', 3],
      ['peg 1', 5],
      ['peg 2', 9],
      ['peg 3', 11],
      ['index', 13],
    ],
    emptyBefore: ['peg 1', 'peg 2'],
  });
});
