import { describe, expect, test } from 'vitest';
import { type DepthSurface, depthSurface } from '../../src/ground/depth/depth-surface.ts';
import { isobathLines } from '../../src/ground/depth/isobath-lines.ts';
import { dryShore, shoreTriangulation } from '../../src/ground/depth/shore-triangulation.ts';
import { localPlane } from '../../src/ground/geodesy/local-plane.ts';
import { waterPlane } from '../../src/ground/water-plane.ts';
import published from './data/planar.json' with { type: 'json' };

/** Sources: closed forms of a cone and of a paraboloid of radius 50 m and depth 4 m. */
const { radius, max_depth, analytic } = published.data_and_expected.basins;

const { toPosition } = localPlane({ lat: 52.75, lng: -0.05 });
/** A round pond drawn with a corner every metre, and its plane. */
const CORNERS = 314;
const pond = waterPlane({
  outline: Array.from({ length: CORNERS }, (_, i) => {
    const angle = (2 * Math.PI * i) / CORNERS;
    return toPosition({ x: radius * Math.cos(angle), y: radius * Math.sin(angle) });
  }),
  islands: [],
});

const DEPTH: Readonly<Record<string, (r: number) => number>> = {
  cone: (r) => max_depth * (1 - r / radius),
  paraboloid: (r) => max_depth * (1 - (r / radius) ** 2),
};

/** Soundings on a square grid of the pond, the deepest point among them. */
function soundings(depthAt: (r: number) => number, spacing: number) {
  const found: { x: number; y: number; depthMetres: number }[] = [];
  for (let x = -radius; x <= radius; x += spacing) {
    for (let y = -radius; y <= radius; y += spacing) {
      const r = Math.hypot(x, y);
      if (r < radius - 0.5) found.push({ x, y, depthMetres: depthAt(r) });
    }
  }
  return found;
}

function radii(line: readonly { x: number; y: number }[]) {
  return line.map(({ x, y }) => Math.hypot(x, y));
}

describe.each(analytic)('a $name plumbed every 2 m', (basin) => {
  const plumbed = soundings(DEPTH[basin.name]!, 2);
  const surface: DepthSurface = depthSurface(pond, plumbed)!;

  test('has its volume, area and mean depth within 0.5 %', () => {
    expect(Math.abs(surface.volumeCubicMetres / basin.volume - 1)).toBeLessThan(0.005);
    expect(Math.abs(surface.areaSquareMetres / basin.surface_area - 1)).toBeLessThan(0.005);
    expect(Math.abs(surface.meanMetres / basin.mean_depth - 1)).toBeLessThan(0.005);
    expect(surface.maximumMetres).toBe(max_depth);
  });

  // Nearer to the point of the cone a grid of 2 m is as wide as the isobath itself.
  test.each(basin.levels.filter(({ contour_radius }) => contour_radius > 12 && contour_radius < radius))(
    'has an isobath of $depth m whose points lie within 1 % of its radius',
    ({ depth, contour_radius }) => {
      const { triangulation, depths } = shoreTriangulation(
        dryShore(pond.shore),
        plumbed.map((p) => ({ ...p, measured: true })),
      );
      const lines = isobathLines(triangulation, depths, () => true, depth);
      expect(lines).toHaveLength(1);
      expect(lines[0]![0]).toEqual(lines[0]![lines[0]!.length - 1]);
      for (const r of radii(lines[0]!)) expect(Math.abs(r / contour_radius - 1)).toBeLessThan(0.01);
    },
  );

  test('is nearer to the truth the closer it is plumbed', () => {
    const errors = [8, 4, 2, 1].map((spacing) =>
      Math.abs(depthSurface(pond, soundings(DEPTH[basin.name]!, spacing))!.volumeCubicMetres / basin.volume - 1),
    );
    expect(errors).toEqual([...errors].sort((a, b) => b - a));
  });
});
