import { describe, expect, it } from 'vitest';
import { depthSection } from '../../src/atlas/depth-section.ts';
import type { LineDepth, PegSurvey, ProfilePoint } from '../../src/ground/survey.ts';
import { EXAMPLE_SETTINGS } from '../domain/example-venue.ts';
import { exampleAtlas } from './example-atlas.ts';

const line = (id: string, distanceMetres: number, changes: Partial<LineDepth> = {}): LineDepth => ({
  id,
  name: `${distanceMetres} m pole`,
  distanceMetres,
  depthMetres: null,
  nearestSoundingMetres: null,
  permitted: true,
  ...changes,
});

const point = (distanceMetres: number, depthMetres: number | null, land = false): ProfilePoint => ({
  distanceMetres,
  depthMetres,
  land,
});

const peg: Partial<PegSurvey> = {
  lineDepths: [
    line('pole-11', 11, { depthMetres: 2.05, nearestSoundingMetres: 1.1 }),
    line('pole-13', 13, { depthMetres: 1.9, nearestSoundingMetres: 0.02 }),
    line('cast-30', 30, { name: '30 m cast', nearestSoundingMetres: 14, why: 'unplumbed', permitted: false }),
  ],
  profile: [
    point(0, 0, true),
    point(1, 0.4),
    point(11, 2.05),
    point(18, 0, true),
    point(21, 0, true),
    point(24, null),
    point(30, null),
  ],
};

const section = (changes: Parameters<typeof exampleAtlas>[0] = {}) =>
  depthSection(exampleAtlas({ peg, ...changes }), 'pit/1');

describe('the depth section of a peg', () => {
  it('gives a depth in the venue’s unit and in the other, and how near it was plumbed', () => {
    expect(section().rows[0]).toMatchObject({
      name: '11 m pole',
      depth: {
        datum: '2.05',
        otherUnit: '6 ft 9 in',
        today: null,
        lightBait: '2.13',
        known: 'nearest plumbing 1.1 m away',
      },
    });
    expect(section().rows[1]?.depth?.known).toBe('plumbed here');
  });

  it('works in feet and inches for a venue that does', () => {
    const venue = { settings: { ...EXAMPLE_SETTINGS, units: { length: 'ft', weight: 'lb' } as const } };
    expect(section({ venue }).rows[0]?.depth).toMatchObject({ datum: '6′9″', otherUnit: '2.05 m', lightBait: '7′0″' });
  });

  it('adds the level of the latest gauge reading, and sets the float by it', () => {
    const view = section({ water: { level: { metres: -0.1, day: '2026-11-20' } } });
    expect(view.level).toBe('By the gauge on 20 Nov 2026 the water stood 0.10 m below datum.');
    expect(view.rows[0]?.depth).toMatchObject({ datum: '2.05', today: '1.95', lightBait: '2.03' });
  });

  it('never guesses: a line nobody has plumbed says so, and how far the nearest sounding is', () => {
    expect(section().rows[2]).toMatchObject({
      depth: null,
      why: 'not plumbed, nearest plumbing 14 m away',
      permitted: false,
    });
  });

  it('tells its drawing in words: depths, the island, the stretch nobody has plumbed', () => {
    expect(section().drawing).toContain(
      'aria-label="Section out from the peg: depths in the table below, island from 18 to 21 m, not plumbed from 24 to 30 m."',
    );
  });

  it('calls the land at the end of the section the far bank where the map has one there', () => {
    const reach = [{ what: 'far-bank', distanceMetres: 20, bearingDegrees: 0, aheadMetres: 20 }];
    const profile = [point(0, 0, true), point(1, 0.4), point(11, 2), point(20, 0)];
    expect(section({ peg: { ...peg, reach, profile } }).drawing).toContain('far bank at 20 m');
  });

  it('has no drawing where the peg faces no water', () => {
    expect(section({ peg: { profile: [], lineDepths: [] } })).toMatchObject({
      drawing: null,
      rows: [],
      isPlumbed: false,
    });
  });
});
