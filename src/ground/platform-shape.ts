import type { Peg } from '../domain/peg.ts';
import type { PlanePoint } from './plane/plane-point.ts';
import { pointAlong } from './plane/sector.ts';

/**
 * The ground a platform may take up about the peg's position, as its corners in a plane with the position at its origin.
 * It reaches out along the facing; where the record does not say on which part of it the position was taken, it may lie
 * its whole length to either side. A peg without a platform of known size is a point.
 */
export function platformShape({
  platform,
  facingDegrees,
}: Pick<Peg, 'platform' | 'facingDegrees'>): readonly PlanePoint[] {
  const { lengthMetres: length = 0, widthMetres: width = 0, measuredAt } = platform ?? {};
  const origin = { x: 0, y: 0 };
  if (length === 0 && width === 0) return [origin];
  const [back, front] = {
    'bank-end': [0, length],
    middle: [-length / 2, length / 2],
    'water-end': [-length, 0],
    unknown: [-length, length],
  }[measuredAt ?? 'unknown'] as [number, number];
  return [back, front].flatMap((along) => {
    const middle = pointAlong(origin, facingDegrees, along);
    return [-width / 2, width / 2].map((aside) => pointAlong(middle, facingDegrees + 90, aside));
  });
}
