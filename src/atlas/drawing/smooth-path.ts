import { short } from './svg-markup.ts';

type Place = readonly [x: number, y: number];

/**
 * A smooth path through places from left to right that rises and falls only where they do: between two of them it is never
 * higher or lower than both. Cubic with the slopes of M. Steffen, "A simple method for monotonic interpolation in one
 * dimension", Astronomy and Astrophysics 239 (1990), 443–450. In relative steps, empty without places.
 * @param unit steps are rounded to it: a tenth of a user unit cannot be seen, and a whole one spares a small drawing bytes
 */
export function smoothThrough(places: readonly Place[], unit: 0.1 | 1 = 0.1): string {
  const [first] = places;
  if (first === undefined) return '';
  const rounded = (value: number) => Math.round(value / unit) * unit;
  const slopes = places.map((_, i) => slopeAt(places, i));
  let [lastX, lastY] = first.map(rounded) as [number, number];
  const step = (x: number, y: number) => `${short(rounded(x) - lastX)},${short(rounded(y) - lastY)}`;
  const start = `M${short(lastX)},${short(lastY)}`;
  const curves = places.slice(1).map(([x, y], i) => {
    const [fromX, fromY] = places[i]!;
    const third = (x - fromX) / 3;
    const controls = [step(fromX + third, fromY + third * slopes[i]!), step(x - third, y - third * slopes[i + 1]!)];
    const curve = y === fromY ? `h${short(rounded(x) - lastX)}` : `c${controls.join(' ')} ${step(x, y)}`;
    [lastX, lastY] = [rounded(x), rounded(y)];
    return curve;
  });
  return start + curves.join('');
}

/** Steffen's slope at a place: the parabola's through it and its neighbours, held so that no side overshoots; level at an end. */
function slopeAt(places: readonly Place[], i: number): number {
  const [before, at, after] = [places[i - 1], places[i]!, places[i + 1]];
  if (before === undefined || after === undefined) return 0;
  const [left, right] = [at[0] - before[0], after[0] - at[0]];
  if (left <= 0 || right <= 0) return 0;
  const [rise, next] = [(at[1] - before[1]) / left, (after[1] - at[1]) / right];
  const parabola = (rise * right + next * left) / (left + right);
  const least = Math.min(Math.abs(rise), Math.abs(next), Math.abs(parabola) / 2);
  return (Math.sign(rise) + Math.sign(next)) * least;
}
