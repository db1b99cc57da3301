import { describe, expect, test } from 'vitest';
import type { Venue } from '../../src/domain/venue.ts';
import { destination } from '../../src/ground/geodesy/destination.ts';
import { surveyVenue } from '../../src/ground/survey-venue.ts';
import { EXAMPLE_SETTINGS, examplePeg, exampleVenue } from '../domain/example-venue.ts';
import { pondMap, spot } from './example-pond.ts';

const sounding = (x: number, y: number, depthMetres: number) => ({
  water: 'pit',
  at: spot(x, y),
  depthMetres,
  day: '2026-11-01',
  file: 'soundings/pit.csv',
  line: 2,
});

function venue(changes: Partial<Venue> = {}): Venue {
  const [pit] = exampleVenue().waters;
  return exampleVenue({
    waters: [{ ...pit!, map: pondMap() }],
    pegs: [
      examplePeg('1', { at: spot(-10, -31), facingDegrees: 0 }),
      examplePeg('2', { at: spot(10, -31), facingDegrees: 0 }),
    ],
    ...changes,
  });
}

describe('the survey of a venue', () => {
  test('is plain data with every water and every peg', () => {
    const survey = surveyVenue(venue());
    expect(Object.keys(survey.waters)).toEqual(['pit']);
    expect(Object.keys(survey.pegs)).toEqual(['pit/1', 'pit/2']);
    expect(JSON.parse(JSON.stringify(survey))).toEqual(survey);
  });

  test('is the same on a second run, and changes nothing it is given', () => {
    const given = venue({
      soundings: [sounding(0, 0, 2)],
      gauge: [{ water: 'pit', day: '2026-11-01', levelMetres: 0.1 }],
    });
    const before = structuredClone(given);
    expect(surveyVenue(given)).toEqual(surveyVenue(given));
    expect(given).toEqual(before);
  });

  test('has no depth where nothing was plumbed, even where a record gives its margin', () => {
    const survey = surveyVenue(
      venue({ pegs: [examplePeg('1', { at: spot(-10, -31), facingDegrees: 0, marginDepthMetres: 0.5 })] }),
    );
    expect(survey.waters.pit!.depth).toBeNull();
    expect(survey.pegs['pit/1']!.lineDepths[0]).toMatchObject({ id: 'margin', depthMetres: 0.5 });
    expect(survey.pegs['pit/1']!.lineDepths[1]).toMatchObject({ depthMetres: null, why: 'unplumbed' });
  });

  test('brings soundings to datum, and tells today’s level beside', () => {
    const survey = surveyVenue(
      venue({
        soundings: [sounding(0, 0, 2), sounding(0, 200, 3)],
        gauge: [
          { water: 'pit', day: '2026-11-02', levelMetres: 0.2 },
          { water: 'pit', day: '2026-11-20', levelMetres: -0.1 },
          { water: 'pit', day: '2026-12-01', levelMetres: 0.9 },
        ],
      }),
    );
    expect(survey.waters.pit!.depth).toMatchObject({
      soundings: 1,
      uncorrected: 0,
      unused: [{ why: 'outside', soundings: 1 }],
    });
    expect(survey.waters.pit!.depth!.maximumMetres).toBeCloseTo(1.8, 9);
    expect(survey.waters.pit!.level).toEqual({ metres: -0.1, day: '2026-11-20' });
  });

  test('makes a dug margin part of the bed where the water is plumbed', () => {
    const pegs = [examplePeg('1', { at: spot(0, -31), facingDegrees: 0, marginDepthMetres: 0.6 })];
    const soundings = [-25, -20, -15].map((y) => sounding(0, y, 2));
    const [edge] = surveyVenue(venue({ pegs, soundings })).pegs['pit/1']!.profile.filter(({ land }) => !land);
    expect(edge!.depthMetres).toBeCloseTo(0.6, 2);
  });

  test('tells clock times in London for Great Britain, and in UTC elsewhere, where there is no grid reference', () => {
    expect(surveyVenue(venue()).waters.pit!.timeZone).toBe('Europe/London');
    expect(surveyVenue(venue()).pegs['pit/1']!.gridReference).toMatch(/^TF \d{4} \d{4}$/);
    const fiji = { lat: -17.7, lng: 179.9999 };
    const [pit] = venue().waters;
    const outline = [45, 135, 225, 315].map((bearing) => destination(fiji, bearing, 60));
    const survey = surveyVenue(
      venue({
        waters: [{ ...pit!, map: pondMap({ outline }) }],
        pegs: [examplePeg('1', { at: destination(fiji, 180, 43), facingDegrees: 0 })],
      }),
    );
    expect(survey.waters.pit!.timeZone).toBe('UTC');
    expect(survey.pegs['pit/1']).toMatchObject({ gridReference: null, facesWater: true });
    expect(survey.pegs['pit/1']!.reach[0]!.distanceMetres).toBeCloseTo(43 + 60 * Math.SQRT1_2, 1);
  });

  test('states of a peg that faces away from water that it does, and gives no reach, depth or profile', () => {
    const survey = surveyVenue(venue({ pegs: [examplePeg('1', { at: spot(0, -31), facingDegrees: 180 })] }));
    expect(survey.pegs['pit/1']).toMatchObject({ facesWater: false, reach: [], lineDepths: [], profile: [] });
    expect(survey.pegs['pit/1']!.wind).toHaveLength(16);
  });

  test('takes a drivable gate for the nearest where there is one', () => {
    const gate = (name: string, x: number, vehicles?: boolean) => ({
      id: name,
      kind: 'gate' as const,
      name,
      at: spot(x, -60),
      ...(vehicles === undefined ? {} : { vehicles }),
    });
    const [pit] = venue().waters;
    const gates = (...places: ReturnType<typeof gate>[]) =>
      surveyVenue(venue({ waters: [{ ...pit!, map: pondMap({ places }) }] })).pegs['pit/1']!.gates.best?.name;
    expect(gates(gate('stile', -10, false), gate('road', 90, true))).toBe('road');
    expect(gates(gate('stile', -10, false), gate('other', 90))).toBe('other');
    expect(gates()).toBeUndefined();
  });

  test('of a venue without waters or pegs is empty', () => {
    expect(surveyVenue(exampleVenue({ waters: [], pegs: [] }))).toEqual({ waters: {}, pegs: {} });
  });

  test('measures pegs of one water against the line drawn on another’s map', () => {
    const [pit] = venue().waters;
    const other = {
      ...pit!,
      id: 'other',
      map: pondMap({
        outline: [spot(200, 0), spot(300, 0), spot(300, 60), spot(200, 60)],
        overheadLines: [{ id: 'l', name: '11 kV line', line: [spot(-300, -60), spot(300, -60)] }],
      }),
    };
    const [standOff] = surveyVenue(venue({ waters: [pit!, other] })).pegs['pit/1']!.standOffs;
    expect(standOff!.mappedMetres).toBeCloseTo(29, 2);
    expect(standOff!.verdict).toBe('inside');
    expect(EXAMPLE_SETTINGS.standOff.metres).toBe(30);
  });
});
