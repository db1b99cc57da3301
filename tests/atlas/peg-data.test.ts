import { describe, expect, it } from 'vitest';
import { pegData } from '../../src/atlas/peg-data.ts';
import { examplePeg } from '../domain/example-venue.ts';
import { EMPTY_RATINGS, exampleAtlas } from './example-atlas.ts';

const WALK = {
  from: 'Lodge',
  distanceMetres: 139.64,
  steps: 0,
  steepest: null,
  narrowestMetres: null,
  notStated: [],
  underLines: [],
} as const;

describe('pegData', () => {
  it('lists pegs by number, with null where nothing is known', () => {
    const atlas = exampleAtlas({ venue: { pegs: ['10', '2', '14a', '14'].map((peg) => examplePeg(peg)) } });
    const data = pegData(atlas);
    expect(data.map(({ peg }) => peg)).toEqual(['2', '10', '14', '14a']);
    expect(data[0]).toMatchObject({
      water: 'pit',
      status: 'open',
      statusReason: null,
      position: { lat: 52.75, lng: -0.05 },
      overheadLineM: null,
      walkM: null,
      stepFree: null,
      worths: [],
      hazards: [],
    });
  });

  it('gives the distance to the nearest line as mapped, and what is left of it beside', () => {
    const line = {
      line: 'l',
      name: 'l',
      mappedMetres: 41.637,
      bearingDegrees: 90,
      platformMetres: 37.637,
      sweptMetres: 31.2,
    };
    const standOffs = [
      { ...line, verdict: 'near' },
      { ...line, mappedMetres: 300, platformMetres: 296, sweptMetres: 256, verdict: 'clear' },
    ] as const;
    expect(pegData(exampleAtlas({ peg: { standOffs } }))[0]).toMatchObject({
      overheadLineM: 41.64,
      overheadLineClearM: 31.2,
    });
  });

  it('takes the shortest walk, and calls a peg step-free when some way is', () => {
    const walks = [
      { ...WALK, stepFree: false },
      { ...WALK, distanceMetres: 300, stepFree: true },
    ];
    expect(pegData(exampleAtlas({ peg: { walks } }))[0]).toMatchObject({ walkM: 139.6, stepFree: true });
    expect(pegData(exampleAtlas({ peg: { walks: [{ ...WALK, stepFree: null }] } }))[0]?.stepFree).toBeNull();
    expect(pegData(exampleAtlas({ peg: { walks: [{ ...WALK, stepFree: false }] } }))[0]?.stepFree).toBe(false);
  });

  it('keeps a worth together with its doubt, and a depth with what it rests on', () => {
    const row = {
      water: 'pit',
      peg: '1',
      month: 11,
      worth: 0.81999,
      low80: 0.66,
      high80: 1.02,
      sessions: 14,
      evidence: 'fair',
    } as const;
    const lineDepths = [
      {
        id: 'pole-11',
        name: '11 m pole',
        distanceMetres: 11,
        depthMetres: null,
        nearestSoundingMetres: 14.04,
        why: 'unplumbed' as const,
        permitted: true,
      },
    ];
    const atlas = exampleAtlas({
      peg: { lineDepths },
      ratings: { bags: [{ ...EMPTY_RATINGS.bags[0]!, pegMonths: [row] }] },
    });
    const [datum] = pegData(atlas);
    expect(datum?.worths).toEqual([
      { month: 11, worth: 0.82, low80: 0.66, high80: 1.02, sessions: 14, evidence: 'fair' },
    ]);
    expect(datum?.depths).toEqual([
      { line: 'pole-11', distanceM: 11, depthM: null, nearestSoundingM: 14, why: 'not plumbed' },
    ]);
  });

  it('leaves out hazards that are cleared', () => {
    const hazard = { kind: 'trip', place: 'path', severity: 2, likelihood: 2, foundOn: '2026-01-01' } as const;
    const peg = examplePeg('1', { hazards: [hazard, { ...hazard, clearedOn: '2026-02-01' }] });
    expect(pegData(exampleAtlas({ venue: { pegs: [peg] } }))[0]?.hazards).toHaveLength(1);
  });
});
