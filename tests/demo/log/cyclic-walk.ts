import type { Chance } from '../chance.ts';

/**
 * Draws a cyclic first-order random walk that sums to zero: covariance `sd`² times the pseudo-inverse of the walk's
 * structure matrix, the circulant (2, −1, 0, …, −1) (Rue and Held, 2005, chapter 3). Drawn in that matrix's
 * eigenbasis: waves of frequency k with eigenvalue 2 − 2 cos(2πk/n).
 */
export function drawCyclicWalk(count: number, sd: number, chance: Chance): number[] {
  const walk = new Array<number>(count).fill(0);
  for (let frequency = 1; frequency <= count / 2; frequency++) {
    const eigenvalue = 2 - 2 * Math.cos((2 * Math.PI * frequency) / count);
    const isHalfWave = frequency * 2 === count;
    const norm = Math.sqrt(isHalfWave ? 1 / count : 2 / count) / Math.sqrt(eigenvalue);
    const [alongCosine, alongSine] = [chance.normal(), isHalfWave ? 0 : chance.normal()];
    for (let i = 0; i < count; i++) {
      const angle = (2 * Math.PI * frequency * i) / count;
      walk[i]! += sd * norm * (alongCosine * Math.cos(angle) + alongSine * Math.sin(angle));
    }
  }
  return walk;
}
