import type { Chance } from '../chance.ts';
import { bankPlace, ringLength, type SpotRing, smoothRing } from './ring.ts';
import { type Spot, spotAt } from './spot.ts';

/** A patch along the bank from one place of the outline to another, reaching into the water (or, if negative, inland). */
export function bankPatch(outline: SpotRing, fromMetres: number, toMetres: number, reachMetres: number): SpotRing {
  const steps = Math.max(3, Math.round((toMetres - fromMetres) / 4));
  const near: Spot[] = [];
  const far: Spot[] = [];
  for (let i = 0; i <= steps; i++) {
    const place = bankPlace(outline, fromMetres + ((toMetres - fromMetres) * i) / steps);
    const belly = Math.sin((Math.PI * (i + 0.6)) / (steps + 1.2));
    near.push(spotAt(place.at, place.inwardDegrees, 0.3 * Math.sign(reachMetres)));
    far.push(spotAt(place.at, place.inwardDegrees, reachMetres * (0.35 + 0.65 * belly)));
  }
  return [...near, ...far.reverse()];
}

/** A round patch with an uneven edge: an island, a bed of lilies. */
export function roundPatch(
  at: Spot,
  longMetres: number,
  shortMetres: number,
  bearingDegrees: number,
  chance: Chance,
): SpotRing {
  const controls = Array.from({ length: 10 }, (_, i) => {
    const angle = (i * Math.PI) / 5;
    const wobble = chance.between(0.88, 1.1);
    const along = spotAt(at, bearingDegrees, Math.cos(angle) * longMetres * wobble);
    return spotAt(along, bearingDegrees - 90, Math.sin(angle) * shortMetres * wobble);
  });
  return smoothRing(controls, Math.max(1.2, (longMetres + shortMetres) / 8));
}

/** The outline of a winding channel: its middle line with half its width, set off to both sides and rounded at the ends. */
export function channelControls(middle: readonly (readonly [x: number, y: number, halfWidth: number])[]): Spot[] {
  const left: Spot[] = [];
  const right: Spot[] = [];
  middle.forEach(([x, y, halfWidth], i) => {
    const [beforeX, beforeY] = middle[Math.max(0, i - 1)]!;
    const [afterX, afterY] = middle[Math.min(middle.length - 1, i + 1)]!;
    const length = Math.hypot(afterX - beforeX, afterY - beforeY);
    const acrossX = -(afterY - beforeY) / length;
    const acrossY = (afterX - beforeX) / length;
    left.push({ x: x + acrossX * halfWidth, y: y + acrossY * halfWidth });
    right.push({ x: x - acrossX * halfWidth, y: y - acrossY * halfWidth });
  });
  const cap = (end: readonly [number, number, number], before: readonly [number, number, number]): Spot => {
    const length = Math.hypot(end[0] - before[0], end[1] - before[1]);
    const reach = end[2] * 0.8;
    return { x: end[0] + ((end[0] - before[0]) * reach) / length, y: end[1] + ((end[1] - before[1]) * reach) / length };
  };
  const last = middle.length - 1;
  return [...right, cap(middle[last]!, middle[last - 1]!), ...left.reverse(), cap(middle[0]!, middle[1]!)];
}

/** Pegs evenly along the stretches of bank that are free of gaps, each moved a little by chance. Metres round the outline. */
export function pegsAlongBank(
  outline: SpotRing,
  count: number,
  gaps: readonly (readonly [fromMetres: number, toMetres: number])[],
  chance: Chance,
): number[] {
  const length = ringLength(outline);
  const isFree = (along: number) => !gaps.some(([from, to]) => along >= from && along <= to);
  const free: number[] = [];
  for (let along = 0; along < length; along += 0.25) if (isFree(along)) free.push(along);
  const spacing = free.length / count;
  return Array.from({ length: count }, (_, i) => {
    const share = (i + 0.5 + chance.between(-0.1, 0.1)) * spacing;
    return free[Math.min(free.length - 1, Math.floor(share))]!;
  });
}
