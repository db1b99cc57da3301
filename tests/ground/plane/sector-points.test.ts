import fc from 'fast-check';
import { expect, test } from 'vitest';
import { isWithinAngle } from '../../../src/ground/plane/sector.ts';
import { pointsInSector } from '../../../src/ground/plane/sector-points.ts';

const coordinate = fc.double({ min: -60, max: 60, noNaN: true });
const ring = fc.array(fc.record({ x: coordinate, y: coordinate }), { minLength: 3, maxLength: 8 });

test('no point of the ring inside the sector is nearer than the first', () => {
  fc.assert(
    fc.property(
      ring,
      fc.double({ min: 0, max: 360, noNaN: true }),
      fc.double({ min: 5, max: 300, noNaN: true }),
      (drawn, bearingDegrees, angleDegrees) => {
        const sector = { apex: { x: 0, y: 0 }, bearingDegrees, angleDegrees, radiusMetres: 200 };
        const [first] = pointsInSector(sector, drawn);
        const least = first === undefined ? Infinity : Math.hypot(first.x, first.y);
        drawn.forEach((a, i) => {
          const b = drawn[(i + 1) % drawn.length]!;
          // A hair inside the sides, where rounding cannot tell in from out.
          const inner = { ...sector, angleDegrees: angleDegrees - 0.01 };
          for (let k = 0; k <= 50; k++) {
            const p = { x: a.x + (k / 50) * (b.x - a.x), y: a.y + (k / 50) * (b.y - a.y) };
            if (Math.hypot(p.x, p.y) > 1e-6 && isWithinAngle(inner, p))
              expect(Math.hypot(p.x, p.y)).toBeGreaterThanOrEqual(least - 1e-6);
          }
        });
      },
    ),
    { numRuns: 300 },
  );
});

test('a ring behind the sector has no point in it', () => {
  const sector = { apex: { x: 0, y: 0 }, bearingDegrees: 0, angleDegrees: 90, radiusMetres: 200 };
  expect(
    pointsInSector(sector, [
      { x: -5, y: -20 },
      { x: 5, y: -20 },
      { x: 0, y: -30 },
    ]),
  ).toEqual([]);
});

test('a ring of one point is that point', () => {
  const sector = { apex: { x: 0, y: 0 }, bearingDegrees: 0, angleDegrees: 90, radiusMetres: 200 };
  expect(pointsInSector(sector, [{ x: 3, y: 40 }])[0]).toMatchObject({ x: 3, y: 40 });
});
