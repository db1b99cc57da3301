import { type Peg, type PegKey, pegKey } from '../domain/peg.ts';
import type { PegStand } from './peg-stand.ts';
import type { PlaneRing } from './plane/plane-point.ts';
import { signedRingArea } from './plane/ring-area.ts';
import type { Neighbour } from './survey.ts';
import { holdsWater, type WaterPlane } from './water-plane.ts';

/** A peg's place along the line of a bank. */
interface BankPlace {
  readonly key: PegKey;
  readonly ring: number;
  readonly alongMetres: number;
}

/** The next peg on either hand of each, along the line of the bank it stands on (outline or island), with the way along it. */
export function neighboursOf(
  pegs: readonly Peg[],
  stands: ReadonlyMap<PegKey, PegStand>,
  water: WaterPlane,
): ReadonlyMap<PegKey, readonly Neighbour[]> {
  const bank = bankLengths(water.shore);
  const places = pegs.map((peg): BankPlace => {
    const key = pegKey(peg.water, peg.peg);
    const foot = water.shoreIndex.nearest(stands.get(key)!.at)!;
    const { ring, startMetres, lengthMetres } = bank.stretches[foot.segment]!;
    return { key, ring, alongMetres: startMetres + foot.share * lengthMetres };
  });
  const found = new Map<PegKey, readonly Neighbour[]>();
  water.shore.forEach((ring, r) => {
    const onRing = places.filter((place) => place.ring === r).sort((a, b) => a.alongMetres - b.alongMetres);
    // An angler who looks at the water along an anticlockwise outline finds the next peg on the right hand; on an island
    // the water lies on the other side of the line.
    const isAnticlockwise = signedRingArea(ring) > 0;
    const onward = isAnticlockwise === holdsWater(ring, water.isWater) ? 'right' : 'left';
    onRing.forEach((place, i) => {
      const gapTo = (step: number): Neighbour[] => {
        const other = onRing[(i + step + onRing.length) % onRing.length]!;
        if (other.key === place.key) return [];
        const whole = bank.ringLengths[r]!;
        const ahead = (step * (other.alongMetres - place.alongMetres) + whole) % whole;
        const side = step === 1 ? onward : onward === 'right' ? 'left' : 'right';
        return [{ peg: other.key, side, gapMetres: ahead }];
      };
      const both = [...gapTo(-1), ...gapTo(1)];
      found.set(
        place.key,
        both.sort((a, b) => (a.side < b.side ? -1 : 1)),
      );
    });
  });
  return found;
}

function bankLengths(shore: readonly PlaneRing[]) {
  const ringLengths: number[] = [];
  const stretches: { ring: number; startMetres: number; lengthMetres: number }[] = [];
  shore.forEach((ring, r) => {
    let startMetres = 0;
    ring.forEach((a, i) => {
      const b = ring[(i + 1) % ring.length]!;
      const lengthMetres = Math.hypot(b.x - a.x, b.y - a.y);
      stretches.push({ ring: r, startMetres, lengthMetres });
      startMetres += lengthMetres;
    });
    ringLengths.push(startMetres);
  });
  return { ringLengths, stretches };
}
