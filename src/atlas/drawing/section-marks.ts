import type { Point } from './simplify-line.ts';
import { escapeMarkup } from './svg-markup.ts';

/** A section of a match on a map: its letter, and its pegs in their order along the bank. */
export interface SectionLine {
  readonly name: string;
  readonly line: readonly Point[];
}

/** How far from the line the letter stands. */
const LETTER_AWAY = 150;

/**
 * Each section as a band along its pegs with its letter on the water's side of it, two kinds of band in turn, so that
 * neighbours are told apart without colour.
 */
export function sectionMarks(sections: readonly SectionLine[], water: readonly Point[]): string {
  const middle: Point = [mean(water.map(([x]) => x)), mean(water.map(([, y]) => y))];
  return sections
    .filter(({ line }) => line.length > 0)
    .map(({ name, line }, i) => {
      const points = line.map(([x, y]) => `${Math.round(x)} ${Math.round(y)}`).join('L');
      const [x, y] = towards(line[Math.floor(line.length / 2)]!, middle);
      const letter = escapeMarkup(name);
      return `<g class="m-section${i % 2 === 0 ? '' : ' m-other'}"><path d="M${points}${line.length === 1 ? 'h0' : ''}"/><text x="${x}" y="${y}">${letter}<title>Section ${letter}</title></text></g>`;
    })
    .join('');
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
}

function towards([x, y]: Point, [toX, toY]: Point): Point {
  const distance = Math.hypot(toX - x, toY - y);
  const share = distance === 0 ? 0 : Math.min(1, LETTER_AWAY / distance);
  return [Math.round(x + (toX - x) * share), Math.round(y + (toY - y) * share)];
}
