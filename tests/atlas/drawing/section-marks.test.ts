import { expect, test } from 'vitest';
import { sectionMarks } from '../../../src/atlas/drawing/section-marks.ts';

const WATER = [
  [0, 0],
  [1000, 0],
  [1000, 1000],
  [0, 1000],
] as const;

test('draws a band along the pegs of each section with its letter towards the water, neighbours told apart', () => {
  const svg = sectionMarks(
    [
      {
        name: 'A',
        line: [
          [0, 100],
          [0, 500],
          [0, 900],
        ],
      },
      { name: 'B', line: [[1000, 500]] },
      { name: 'C', line: [] },
    ],
    WATER,
  );
  expect(svg).toBe(
    '<g class="m-section"><path d="M0 100L0 500L0 900"/><text x="150" y="500">A<title>Section A</title></text></g>' +
      '<g class="m-section m-other"><path d="M1000 500h0"/><text x="850" y="500">B<title>Section B</title></text></g>',
  );
});

test('keeps a name from becoming markup', () => {
  expect(sectionMarks([{ name: '<b>', line: [[1, 1]] }], WATER)).not.toContain('<b>');
});
