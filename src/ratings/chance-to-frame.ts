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
  const drawnFields = drawFields(pegs, bagSds, rivals, seed);
  return pegs.map(({ logWorth }, i) => {
    let sum = 0;
    for (const drawn of drawnFields) sum += normalCdf((logWorth - bagToBeat(drawn, i, field.places)) / bagSds[i]!);
    return sum / drawnFields.length;
  });
}

/** The pegs that a field's rivals drew with the bags they took, least first, and one more peg for whoever finds a rival on their own. */
interface DrawnField {
  readonly pegs: readonly number[];
  readonly bags: readonly number[];
  /** Peg of the one more than there are rivals. */
  readonly spare: number;
}

function drawFields(
  pegs: readonly PegStanding[],
  bagSds: readonly number[],
  rivals: number,
  seed: number,
): DrawnField[] {
  const normal = seededNormals(seed);
  const order = pegs.map((_, i) => i);
  return Array.from({ length: FIELDS }, () => {
    const drawn: { readonly peg: number; readonly bag: number }[] = [];
    for (let i = 0; i <= rivals; i++) {
      const swap = i + Math.floor(normal.uniform() * (order.length - i));
      [order[i], order[swap]] = [order[swap]!, order[i]!];
      const peg = order[i]!;
      drawn.push({ peg, bag: pegs[peg]!.logWorth + bagSds[peg]! * normal.next() });
    }
    const spare = drawn.at(-1)!.peg;
    drawn.sort((a, b) => a.bag - b.bag);
    return { pegs: drawn.map(({ peg }) => peg), bags: drawn.map(({ bag }) => bag), spare };
  });
}

/**
 * The log bag of the last framing place among the rivals of whoever sits on `own`. Nobody else can have drawn that peg:
 * the rival who did sits on the spare one.
 */
function bagToBeat({ pegs, bags, spare }: DrawnField, own: number, places: number): number {
  const onOwn = pegs.indexOf(own);
  const leftOut = onOwn === -1 ? pegs.indexOf(spare) : onOwn;
  const rank = bags.length - 1 - places;
  return bags[rank < leftOut ? rank : rank + 1]!;
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
