import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type BedPoint, type DepthSection, depthProfile } from '../../../src/atlas/drawing/depth-profile.ts';
import { compareDrawing, expectWellFormed } from './compare-drawing.ts';

const bedTo = (end: number, depthAt: (distanceMetres: number) => number | null, land: (d: number) => boolean) =>
  Array.from({ length: end * 2 + 1 }, (_, index): BedPoint => {
    const distanceMetres = index / 2;
    const isLand = land(distanceMetres);
    return { distanceMetres, depthMetres: isLand ? 0 : depthAt(distanceMetres), land: isLand };
  });

const linesAt = (...places: readonly (readonly [number, number | null])[]): DepthSection['lines'] =>
  places.map(([distanceMetres, depthMetres]) => ({
    distanceMetres,
    depthMetres,
    distanceWords: String(distanceMetres),
    depthWords: depthMetres?.toFixed(2) ?? '',
  }));

/** Margin and pole lines, an island from 18 to 22 m, nothing plumbed beyond 27 m. */
const ISLAND: DepthSection = {
  levelMetres: -0.14,
  bed: bedTo(
    42,
    (d) => (d >= 27 ? null : d < 18 ? 0.35 + Math.min(1.7, d * 0.2) : (d - 22) * 0.4),
    (d) => d >= 18 && d <= 22,
  ),
  lines: linesAt([1, 0.55], [4, 1.15], [6, 1.55], [11, 2.05], [13, 2.05], [16, 2.05], [30, null], [40, null]),
  depthMarks: [1, 2, 3].map((depthMetres) => ({ depthMetres, words: `${depthMetres} m` })),
  landWords: [{ distanceMetres: 20, words: 'island' }],
};

describe('the section through bank and water', () => {
  it('draws island, plumb lines and the unplumbed stretch as committed', () => {
    const svg = depthProfile(ISLAND, 'a section');
    expect(svg).toContain('>plumbed</text>');
    expect(svg).toContain('>island</text>');
    compareDrawing('depth-profile-island', svg);
  });

  it('draws a narrow water to its far bank on one scale, as committed', () => {
    const svg = depthProfile(
      {
        ...ISLAND,
        bed: bedTo(
          14,
          (d) => 0.3 + Math.min(1.4, d * 0.2),
          (d) => d >= 13.5,
        ),
        lines: linesAt([4, 1.1], [11, 1.7]),
      },
      'a section',
    );
    expect(svg).not.toContain('class="break"');
    compareDrawing('depth-profile-far-bank', svg);
  });

  it('changes its scale beyond the pole only where the section reaches well past it, and marks where', () => {
    expect(depthProfile(ISLAND, 'x')).toContain('class="break"');
  });

  it('puts a lead only where somebody has plumbed', () => {
    expect(depthProfile(ISLAND, 'x').match(/class="lead"/g)).toHaveLength(6);
  });

  it('draws a peg nobody has plumbed as all hatched', () => {
    const svg = depthProfile(
      {
        levelMetres: null,
        bed: bedTo(
          20,
          () => null,
          () => false,
        ),
        lines: linesAt([11, null]),
        depthMarks: [],
        landWords: [],
      },
      'x',
    );
    expect(svg).toContain('>not plumbed</text>');
    expect(svg).not.toContain('class="water"');
    expect(svg).not.toContain('class="lead"');
  });

  it('puts a deeper bed lower', () => {
    const lead = (depth: number) => {
      const section = { ...ISLAND, lines: linesAt([11, depth]) };
      return Number(/class="lead" cx="[\d.]+" cy="([\d.]+)"/.exec(depthProfile(section, 'x'))?.[1]);
    };
    expect(lead(2)).toBeGreaterThan(lead(1));
    expect(lead(0)).toBe(36);
  });

  it('is well formed for any bed, also one without points', () => {
    const point = fc.record({
      distanceMetres: fc.double({ min: 0, max: 90, noNaN: true }),
      depthMetres: fc.option(fc.double({ min: 0, max: 12, noNaN: true })),
      land: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.array(point, { maxLength: 25 }), (points) => {
        const bed = [...points].sort((a, b) => a.distanceMetres - b.distanceMetres);
        expectWellFormed(depthProfile({ ...ISLAND, bed }, 'x'));
      }),
      { numRuns: 50 },
    );
  });
});
