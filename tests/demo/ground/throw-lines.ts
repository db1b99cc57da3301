import type { Day } from '../../../src/domain/day.ts';
import type { DrawnPlace } from './drawn-water.ts';
import { bankPlace, ringLength, type SpotRing } from './ring.ts';
import { spotAt } from './spot.ts';

/** Throw lines on posts beside the path, evenly round a water. `letter` begins their names. */
export function throwLinesAlong(
  outline: SpotRing,
  letter: string,
  count: number,
  checkedOn: (index: number) => Day,
): DrawnPlace[] {
  const length = ringLength(outline);
  return Array.from({ length: count }, (_, i) => {
    const place = bankPlace(outline, ((i + 0.35) * length) / count);
    return {
      id: `throw-${letter.toLowerCase()}${i + 1}`,
      kind: 'throw-line',
      name: `Throw line ${letter}${i + 1}`,
      at: spotAt(place.at, place.inwardDegrees + 180, 3.4),
      checkedOn: checkedOn(i),
    };
  });
}
