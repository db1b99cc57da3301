import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type BedPoint, type DepthSection, depthProfile } from '../../../src/atlas/drawing/depth-profile.ts';
import { POLE_JOINTS_METRES } from '../../../src/domain/pole-joints.ts';
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

/** How low each lead is drawn. */
const leadsOf = (svg: string) =>
  [...(/class="lead" d="([^"]*)"/.exec(svg)?.[1] ?? '').matchAll(/M\d+,(\d+)h0/g)].map(([, y]) => Number(y));

/** Margin and pole lines, an island from 18 to 22 m, nothing plumbed beyond 27 m. */
const ISLAND: DepthSection = {
  levelMetres: -0.14,
  poleMetres: 13,
  poleJointsMetres: POLE_JOINTS_METRES,
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
    expect(leadsOf(depthProfile(ISLAND, 'x'))).toHaveLength(6);
  });

  it('draws a peg nobody has plumbed as all hatched', () => {
    const svg = depthProfile(
      {
        levelMetres: null,
        poleMetres: 16,
        poleJointsMetres: POLE_JOINTS_METRES,
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
      return leadsOf(depthProfile(section, 'x'))[0]!;
    };
    expect(lead(2)).toBeGreaterThan(lead(1));
    expect(lead(0)).toBe(46);
  });

  it('carries a pole as a ruler, section by section, only as far as one may go', () => {
    const sections = (poleMetres: number, bed = ISLAND.bed) =>
      / class="joint" x="[\d. ]+" y="27">(\d+)</.exec(depthProfile({ ...ISLAND, poleMetres, bed }, 'x'))?.[1];
    expect(sections(16)).toBe('123456789');
    expect(sections(13)).toBe('1234567');
    // Half a section more is drawn, and counted as one.
    expect(sections(8.8)).toBe('12345');
    expect(depthProfile({ ...ISLAND, poleMetres: 0 }, 'x')).not.toContain('class="pole"');
    // Nobody lays a pole over an island.
    const near = bedTo(
      20,
      () => 1,
      (d) => d >= 6 && d <= 8,
    );
    expect(sections(16, near)).toBe('123');
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
