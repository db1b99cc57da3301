import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator';

/** What is known of the worth of places: log multiples of par, jointly normal. */
export interface JointWorth {
  readonly logMean: readonly number[];
  /** Row by row. */
  readonly covariance: Float64Array;
}

/** Multiples of par, one row a draw from the posterior, one column a place. */
export interface WorthDraws {
  readonly places: number;
  readonly draws: number;
  readonly worth: Float64Array;
}

/** Draws the worth of all places together, so that what the log cannot tell apart moves together. */
export function drawWorth({ logMean, covariance }: JointWorth, draws: number, random: RandomGenerator): WorthDraws {
  const places = logMean.length;
  const root = choleskyRoot(covariance, places);
  const worth = new Float64Array(draws * places);
  const z = new Float64Array(places);
  for (let d = 0; d < draws; d++) {
    for (let j = 0; j < places; j++) z[j] = standardNormal(random);
    for (let i = 0; i < places; i++) {
      let log = logMean[i]!;
      for (let j = 0; j <= i; j++) log += root[i * places + j]! * z[j]!;
      worth[d * places + i] = Math.exp(log);
    }
  }
  return { places, draws, worth };
}

/** A number that follows the standard normal law (Box and Muller, 1958). */
function standardNormal(random: RandomGenerator): number {
  const radius = Math.sqrt(-2 * Math.log(1 - uniformFloat64(random)));
  return radius * Math.cos(2 * Math.PI * uniformFloat64(random));
}

/**
 * One vector a place, whose inner products are the mean products of the places' worths over the draws. What is asked of a plan
 * on average over all draws is then asked of a few short vectors once: the mean square of Σ a_i worth_i is |Σ a_i v_i|².
 */
export interface WorthVectors {
  readonly places: number;
  readonly length: number;
  /** Row by row. */
  readonly vectors: Float64Array;
  /** Mean worth of each place over the draws. */
  readonly mean: Float64Array;
}

/** The vectors of some draws. */
export function worthVectors({ places, draws, worth }: WorthDraws): WorthVectors {
  const products = new Float64Array(places * places);
  const mean = new Float64Array(places);
  for (let d = 0; d < draws; d++) {
    const row = worth.subarray(d * places, (d + 1) * places);
    for (let i = 0; i < places; i++) {
      mean[i] = mean[i]! + row[i]! / draws;
      for (let j = 0; j <= i; j++) products[i * places + j] = products[i * places + j]! + (row[i]! * row[j]!) / draws;
    }
  }
  for (let i = 0; i < places; i++) for (let j = 0; j < i; j++) products[j * places + i] = products[i * places + j]!;
  return { places, length: places, vectors: choleskyRoot(products, places), mean };
}

/** Lower root of a positive semidefinite matrix by Cholesky's method; a direction that holds nothing stays nothing. */
function choleskyRoot(matrix: Float64Array, size: number): Float64Array {
  const root = new Float64Array(size * size);
  const scale = Math.max(1e-300, ...Array.from({ length: size }, (_, i) => matrix[i * size + i]!));
  for (let i = 0; i < size; i++) {
    for (let j = 0; j <= i; j++) {
      let value = matrix[i * size + j]!;
      for (let k = 0; k < j; k++) value -= root[i * size + k]! * root[j * size + k]!;
      if (i === j) root[i * size + i] = value > scale * 1e-12 ? Math.sqrt(value) : 0;
      else root[i * size + j] = root[j * size + j] === 0 ? 0 : value / root[j * size + j]!;
    }
  }
  return root;
}
