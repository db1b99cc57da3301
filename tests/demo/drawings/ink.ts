import type { Chance } from '../chance.ts';

/** A point of a drawing, in its own units, x to the right and y down. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** Colours of a drawing: paper, ink and a few washes. */
export const INK = '#1f2a2e';
const PAPER = '#fbf8f1';
export const WATER_WASH = '#b9cfc8';
export const EARTH_WASH = '#d3bf9c';
export const REED_WASH = '#a98f57';
export const LEAF_WASH = '#8ea379';

const LONGEST_STEP = 60;

/** A line as a hand would draw it: twice over, never quite the same. */
export function inkLine(points: readonly Point[], width: number, chance: Chance): string {
  const strokes = [0.9, 0.35].map((opacity) => {
    const path = wavering(points, width * 0.55, chance);
    return `<path d="${path}" stroke-width="${(width * (0.6 + opacity * 0.5)).toFixed(1)}" stroke-opacity="${opacity}"/>`;
  });
  return `<g fill="none" stroke="${INK}" stroke-linecap="round" stroke-linejoin="round">${strokes.join('')}</g>`;
}

/** A patch of wash: three thin layers that do not quite meet, darker where they overlap. */
export function wash(outline: readonly Point[], colour: string, chance: Chance): string {
  const layers = [0.34, 0.3, 0.26].map((opacity, i) => {
    const path = wavering([...outline, outline[0]!], 2 + i * 3, chance);
    return `<path d="${path}Z" fill-opacity="${opacity}"/>`;
  });
  return `<g fill="${colour}">${layers.join('')}</g>`;
}

/** Short strokes that stand up from a line: reed, grass. `lean` is how far their tips go sideways. */
export function tufts(feet: readonly Point[], height: number, lean: number, chance: Chance): string {
  const strokes = feet.map((foot) => {
    const tip = { x: foot.x + lean * chance.between(-0.6, 1.4), y: foot.y - height * chance.between(0.65, 1.15) };
    const bend = { x: foot.x + lean * 0.2, y: foot.y - height * 0.6 };
    return `M${at(foot)}Q${at(bend)} ${at(tip)}`;
  });
  return `<path d="${strokes.join('')}" fill="none" stroke="${INK}" stroke-width="1.4" stroke-linecap="round" stroke-opacity="0.75"/>`;
}

/** A whole drawing, with a title for those who hear it instead of seeing it. */
export function drawing(width: number, height: number, title: string, parts: readonly string[]): string {
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img">`,
    `<title>${title.replaceAll('&', '&amp;').replaceAll('<', '&lt;')}</title>`,
    `<rect width="${width}" height="${height}" fill="${PAPER}"/>`,
    ...parts,
    '</svg>',
    '',
  ].join('\n');
}

/** A smooth path through points, each moved a little, by quadratic curves between their middles. */
function wavering(points: readonly Point[], jitter: number, chance: Chance): string {
  const moved = withShortSteps(points).map((point) => ({
    x: point.x + jitter * 0.5 * chance.normal(),
    y: point.y + jitter * 0.5 * chance.normal(),
  }));
  const parts = [`M${at(moved[0]!)}`];
  for (let i = 1; i < moved.length - 1; i++) {
    const here = moved[i]!;
    const next = moved[i + 1]!;
    parts.push(`Q${at(here)} ${at({ x: (here.x + next.x) / 2, y: (here.y + next.y) / 2 })}`);
  }
  return `${parts.join('')}L${at(moved[moved.length - 1]!)}`;
}

/** Splits long straight stretches, so that smoothing rounds a corner by a thumb's width and not by half the sheet. */
function withShortSteps(points: readonly Point[]): Point[] {
  return points.flatMap((point, i) => {
    const next = points[i + 1];
    if (next === undefined) return [point];
    const steps = Math.max(1, Math.ceil(Math.hypot(next.x - point.x, next.y - point.y) / LONGEST_STEP));
    return Array.from({ length: steps }, (_, step) => ({
      x: point.x + ((next.x - point.x) * step) / steps,
      y: point.y + ((next.y - point.y) * step) / steps,
    }));
  });
}

function at(point: Point): string {
  return `${point.x.toFixed(1)},${point.y.toFixed(1)}`;
}
