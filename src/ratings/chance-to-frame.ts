import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { normalCdf } from './engine/normal-cdf.ts';
import type { UsualField } from './usual-field.ts';

/** A peg's worth on the log scale, with its doubt. */
export interface PegStanding {
  readonly logWorth: number;
  readonly sd: number;
}

/** With four times as many, no chance of the demo venue moves by more than 0.008. */
const FIELDS = 500;

/**
 * Chance of each peg of a water to frame, for a rod of the club drawn by lot, by simulating fields: rivals of ordinary
 * spread draw the other pegs, each bag scatters by angler, luck and the doubt about its peg, and the bag to beat is that of the
 * last place among them. Of our own bag the chance to beat it is exact. The day lifts all alike and drops out.
 * @param standings The same pegs in the same order at several times, such as the months: all share the luck of one draw, so that they
 *   differ by their worth alone.
 * @returns the chances of each time
 */
export function chancesToFrame(
  standings: readonly (readonly PegStanding[])[],
  field: UsualField,
  spreadSd: number,
  seed: number,
): number[][] {
  const count = standings[0]?.length ?? 0;
  const rivals = Math.min(field.anglers, count) - 1;
  if (rivals < field.places) return standings.map((pegs) => pegs.map(() => 1));
  const draws = drawFields(count, rivals, seed);
  return standings.map((pegs) => chancesAmong(draws, pegs, field.places, spreadSd));
}

function chancesAmong(
  draws: readonly DrawnField[],
  pegs: readonly PegStanding[],
  places: number,
  spreadSd: number,
): number[] {
  const bagSds = pegs.map(({ sd }) => Math.hypot(sd, spreadSd));
  const sums = new Float64Array(pegs.length);
  const bags = new Float64Array(draws[0]!.pegs.length);
  // Of whom to leave out for whoever sits on a peg: the rival who drew it, else the one too many.
  const rankOfPeg = new Int32Array(pegs.length);
  for (const { pegs: drawn, luck } of draws) {
    drawn.forEach((peg, k) => {
      bags[k] = pegs[peg]!.logWorth + bagSds[peg]! * luck[k]!;
    });
    const order = Array.from(bags.keys()).sort((a, b) => bags[a]! - bags[b]!);
    rankOfPeg.fill(order.indexOf(drawn.length - 1));
    order.forEach((k, rank) => {
      rankOfPeg[drawn[k]!] = rank;
    });
    // The last framing place among the rivals: one of those drawn is left out, below it or not.
    const last = drawn.length - 1 - places;
    const [bagBelow, bagAbove] = [bags[order[last]!]!, bags[order[last + 1]!]!];
    for (let own = 0; own < pegs.length; own++) {
      const bagToBeat = last < rankOfPeg[own]! ? bagBelow : bagAbove;
      sums[own] = sums[own]! + normalCdf((pegs[own]!.logWorth - bagToBeat) / bagSds[own]!);
    }
  }
  return Array.from(sums, (sum) => sum / draws.length);
}

/** The pegs that a field's rivals drew, the last for whoever finds a rival on their own, each with its luck in standard deviations. */
interface DrawnField {
  readonly pegs: Int32Array;
  readonly luck: Float64Array;
}

function drawFields(count: number, rivals: number, seed: number): DrawnField[] {
  const normal = seededNormals(seed);
  const order = Int32Array.from({ length: count }, (_, i) => i);
  return Array.from({ length: FIELDS }, () => {
    const luck = new Float64Array(rivals + 1);
    for (let i = 0; i <= rivals; i++) {
      const swap = i + Math.floor(normal.uniform() * (order.length - i));
      [order[i], order[swap]] = [order[swap]!, order[i]!];
      luck[i] = normal.next();
    }
    return { pegs: order.slice(0, rivals + 1), luck };
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
