import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { normalCdf } from './engine/normal-cdf.ts';
import type { UsualField } from './usual-field.ts';

/** A peg's return on the log scale, with its doubt. */
export interface PegStanding {
  readonly logReturn: number;
  readonly sd: number;
}

/** With four times as many, no chance of the demo venue moves by more than 0.008. */
const FIELDS = 500;

/**
 * Chance of each peg of a water to frame, for a rod of the club drawn by lot, by simulating fields: rivals of ordinary
 * spread draw pegs, each bag scatters by angler, luck and the doubt about its peg, and the bag to beat is that of the
 * last place among them. Of our own bag the chance to beat it is exact. The day lifts all alike and drops out.
 * @param spreadSd Standard deviation of an angler's and a bag's luck together, on the log scale.
 */
export function chancesToFrame(
  pegs: readonly PegStanding[],
  field: UsualField,
  spreadSd: number,
  seed: number,
): number[] {
  const rivals = Math.min(field.anglers, pegs.length) - 1;
  if (rivals < field.places) return pegs.map(() => 1);
  const bagSds = pegs.map(({ sd }) => Math.hypot(sd, spreadSd));
  const toBeat = bagsToBeat(pegs, bagSds, rivals, field.places, seed);
  return pegs.map(({ logReturn }, i) => {
    let sum = 0;
    for (const bag of toBeat) sum += normalCdf((logReturn - bag) / bagSds[i]!);
    return sum / toBeat.length;
  });
}

/** The log bag of the last framing place among the rivals, once a field. */
function bagsToBeat(
  pegs: readonly PegStanding[],
  bagSds: readonly number[],
  rivals: number,
  places: number,
  seed: number,
): Float64Array {
  const normal = seededNormals(seed);
  const order = pegs.map((_, i) => i);
  const bags = new Float64Array(rivals);
  return Float64Array.from({ length: FIELDS }, () => {
    for (let i = 0; i < rivals; i++) {
      const swap = i + Math.floor(normal.uniform() * (order.length - i));
      [order[i], order[swap]] = [order[swap]!, order[i]!];
      bags[i] = pegs[order[i]!]!.logReturn + bagSds[order[i]!]! * normal.next();
    }
    return bags.sort()[rivals - places]!;
  });
}

/** Seeded standard normal numbers in pairs (Box and Muller, 1958). */
function seededNormals(seed: number) {
  const generator = xoroshiro128plus(seed);
  const uniform = () => uniformFloat64(generator);
  let spare: number | null = null;
  return {
    uniform,
    next: () => {
      if (spare !== null) {
        const value = spare;
        spare = null;
        return value;
      }
      const radius = Math.sqrt(-2 * Math.log(1 - uniform()));
      const angle = 2 * Math.PI * uniform();
      spare = radius * Math.sin(angle);
      return radius * Math.cos(angle);
    },
  };
}
