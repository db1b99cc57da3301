import { expect, it } from 'vitest';
import { waysUnderLines } from '../../src/atlas/peg-bank.ts';
import { waysUnderLinesOfWater } from '../../src/atlas/ways-under-lines.ts';
import { examplePeg } from '../domain/example-venue.ts';
import { exampleAtlas } from './example-atlas.ts';

const walk = {
  distanceMetres: 100,
  steps: 0,
  steepest: null,
  stepFree: true,
  narrowestMetres: null,
  notStated: [],
} as const;
const WALKS = [
  { ...walk, from: 'Track', underLines: ['Low line'] },
  { ...walk, from: 'Gate', underLines: [] },
];

it('tells a way that passes a line once on its water, with what to do and to which pegs', () => {
  const atlas = exampleAtlas({ venue: { pegs: [examplePeg('1'), examplePeg('2')] }, peg: { walks: WALKS } });
  expect(waysUnderLinesOfWater(atlas, 'pit')).toEqual({
    title: 'The way from Track passes an overhead line',
    action: expect.stringContaining('low and level, taken down and in the bag'),
    ways: [{ from: 'Track', words: 'Low line, to every peg' }],
  });
  expect(waysUnderLinesOfWater(exampleAtlas(), 'pit')).toBeNull();
});

it('says what to do once, however many ways pass a line', () => {
  const walks = WALKS.map((one) => ({ ...one, underLines: ['Low line'] }));
  const told = waysUnderLinesOfWater(exampleAtlas({ peg: { walks } }), 'pit');
  expect(told?.title).toBe('Ways here pass an overhead line');
  expect(told?.ways.map(({ from }) => from)).toEqual(['Track', 'Gate']);
});

it('tells it on the sheet beside the walk where another way is clear, and leaves it to the safety box where none is', () => {
  expect(waysUnderLines({ walks: WALKS })).toEqual([
    {
      name: 'From Track',
      words: expect.stringMatching(/^passes an overhead line \(Low line\)\. Carry rods and poles low/),
    },
  ]);
  expect(waysUnderLines({ walks: [WALKS[0]!] })).toEqual([]);
});
