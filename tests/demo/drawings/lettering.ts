import type { Chance } from '../chance.ts';
import { inkLine, type Point } from './ink.ts';

/** Strokes of each figure on a grid four wide and six high, so that a drawing needs no typeface. */
const STROKES: Readonly<Record<string, readonly (readonly (readonly [number, number])[])[]>> = {
  '0': [
    [
      [2, 0],
      [0.3, 1.5],
      [0.3, 4.5],
      [2, 6],
      [3.7, 4.5],
      [3.7, 1.5],
      [2, 0],
    ],
  ],
  '1': [
    [
      [0.8, 1.2],
      [2.2, 0],
      [2.2, 6],
    ],
  ],
  '2': [
    [
      [0.4, 1.4],
      [1.4, 0],
      [3.2, 0.3],
      [3.4, 1.8],
      [0.3, 6],
      [3.8, 6],
    ],
  ],
  '3': [
    [
      [0.5, 0.6],
      [2.2, 0],
      [3.4, 1.2],
      [1.8, 2.8],
      [3.7, 4.2],
      [2.4, 6],
      [0.3, 5.4],
    ],
  ],
  '4': [
    [
      [2.8, 6],
      [2.8, 0],
      [0.2, 4],
      [3.9, 4],
    ],
  ],
  '5': [
    [
      [3.5, 0],
      [0.8, 0],
      [0.5, 2.6],
      [2.6, 2.3],
      [3.7, 4],
      [2.4, 6],
      [0.3, 5.4],
    ],
  ],
  '6': [
    [
      [3.2, 0.3],
      [1, 2],
      [0.3, 4.4],
      [2, 6],
      [3.7, 4.4],
      [2, 2.9],
      [0.5, 4],
    ],
  ],
  '7': [
    [
      [0.3, 0],
      [3.8, 0],
      [1.4, 6],
    ],
  ],
  '8': [
    [
      [2, 2.8],
      [0.5, 1.4],
      [2, 0],
      [3.5, 1.4],
      [2, 2.8],
      [0.3, 4.4],
      [2, 6],
      [3.7, 4.4],
      [2, 2.8],
    ],
  ],
  '9': [
    [
      [3.5, 2],
      [2, 3.1],
      [0.4, 1.7],
      [2, 0],
      [3.6, 1.6],
      [3, 4.4],
      [1.2, 6],
    ],
  ],
  '.': [
    [
      [1.7, 5.7],
      [2.1, 6],
    ],
  ],
  m: [
    [
      [0.2, 6],
      [0.2, 2.6],
      [1.6, 2.8],
      [2, 6],
      [2.1, 3],
      [3.6, 2.8],
      [3.8, 6],
    ],
  ],
  N: [
    [
      [0.3, 6],
      [0.3, 0],
      [3.7, 6],
      [3.7, 0],
    ],
  ],
};

/** Figures written by hand, their middle at a point. `height` in units of the drawing. */
export function lettering(text: string, middle: Point, height: number, chance: Chance): string {
  const unit = height / 6;
  const advance = (letter: string) => (letter === ' ' ? 2.4 : letter === '.' ? 3 : 5.2);
  const width = [...text].reduce((sum, letter) => sum + advance(letter), 0) * unit;
  let x = middle.x - width / 2;
  const parts: string[] = [];
  for (const letter of text) {
    for (const stroke of STROKES[letter] ?? []) {
      const points = stroke.map(([px, py]) => ({ x: x + px * unit, y: middle.y - height / 2 + py * unit }));
      parts.push(inkLine(points, height / 11, chance));
    }
    x += advance(letter) * unit;
  }
  return parts.join('');
}
