import { describe, expect, it } from 'vitest';
import { findingEntries } from '../../src/atlas/finding-entries.ts';
import { hazardRegister } from '../../src/atlas/hazard-register.ts';
import { placeFindingLines } from '../../src/atlas/place-finding-lines.ts';
import { findingsForPeg } from '../../src/atlas/place-findings.ts';
import { registerCsv } from '../../src/atlas/register-csv.ts';
import type { PlaceHazard } from '../../src/domain/hazard.ts';
import type { MapPlace, Water } from '../../src/domain/map.ts';
import type { PegSurvey } from '../../src/ground/survey.ts';
import { examplePeg, exampleVenue } from '../domain/example-venue.ts';
import { atlasOf } from './example-atlas.ts';

const gate: MapPlace = { id: 'g1', kind: 'gate', name: 'Lane gate', at: { lat: 52, lng: 0 } };
const line: MapPlace = { id: 't1', kind: 'throw-line', name: 'Dam', at: { lat: 52, lng: 0 } };
const found = (kind: string, mappedAs?: string, change: Partial<PlaceHazard> = {}): PlaceHazard => ({
  kind,
  place: 'seen there',
  severity: 3,
  likelihood: 3,
  foundOn: '2026-11-12',
  ...(mappedAs === undefined ? {} : { mappedAs }),
  ...change,
});

function venueWith(...hazards: PlaceHazard[]) {
  const venue = exampleVenue({ pegs: [examplePeg('1')] });
  const [first] = venue.waters;
  const map = {
    ...first!.map,
    places: [gate, line],
    paths: [{ id: 'p1', name: 'North path', line: [] }],
  };
  const water: Water = { ...first!, map, hazards };
  return { ...venue, waters: [water] };
}

const survey = (places: readonly MapPlace[], wayPaths: readonly string[] | null = null): PegSurvey =>
  ({
    wayPaths,
    nearestAed: null,
    nearestThrowLine: null,
    gates: { best: places[0] === undefined ? null : { place: places[0] }, atNight: null, lockedNearer: null },
    walks: [],
  }) as unknown as PegSurvey;
const kinds = (venue: ReturnType<typeof venueWith>, at: PegSurvey) =>
  findingsForPeg(venue, venue.pegs[0]!, at).map(({ hazard, where }) => `${hazard.kind} at ${where}`);

describe('what is found at no peg', () => {
  const venue = venueWith(
    found('locked-gate', 'g1'),
    found('blocked-way', 'p1'),
    found('missing-kit', 't1'),
    found('rats', 'p1', { clearedOn: '2026-11-20' }),
  );

  it('is told on the sheets whose gate, path or kit it is, and not where it is cleared', () => {
    expect(kinds(venue, survey([gate]))).toEqual([
      'locked-gate at Lane gate',
      'blocked-way at North path',
      'missing-kit at Dam',
    ]);
    expect(kinds(venue, survey([]))).toEqual(['blocked-way at North path', 'missing-kit at Dam']);
  });

  it('on a path is told on the sheets to which a way runs along it, and on all of the water where the way is not known', () => {
    const [water] = venue.waters;
    expect(kinds(venue, survey([], [`${water!.id}/p1`]))).toContain('blocked-way at North path');
    expect(kinds(venue, survey([], [`${water!.id}/p2`, 'elsewhere/p1']))).toEqual(['missing-kit at Dam']);
    expect(kinds(venue, survey([], null))).toContain('blocked-way at North path');
    // The way to a peg of another water may run along this path: then it is that peg's danger too.
    const other = { ...venue, pegs: [examplePeg('1', { water: 'lake' })] };
    expect(kinds(other, survey([], [`${water!.id}/p1`]))).toEqual(['blocked-way at North path']);
  });

  it('stands in the lines of the water and home pages, and in the register with its place', () => {
    expect(placeFindingLines(venue, venue.waters).map(({ title, where }) => `${title}: ${where}`)).toContain(
      `Gate locked: ${venue.waters[0]!.name}, Lane gate: seen there`,
    );
    const register = hazardRegister(atlasOf(venue));
    expect(register.inForce.map(({ where }) => where)).toContain(`${venue.waters[0]!.name}, Lane gate`);
    expect(register.cleared).toHaveLength(1);
    expect(registerCsv(register)).toContain('Lane gate');
  });

  it('is lost nowhere when its place is no longer on the map', () => {
    const astray = venueWith(found('fallen-tree', 'gone'));
    expect(kinds(astray, survey([]))).toEqual(['fallen-tree at gone']);
    expect(placeFindingLines(astray, astray.waters)).toHaveLength(1);
  });

  it('is an entry of the feed whose id stays and whose day moves only when it changes', () => {
    const entry = (change: Partial<PlaceHazard>) =>
      findingEntries(venueWith(found('locked-gate', 'g1', change)).waters, (path) => `https://x.example/${path}`)[0];
    expect(entry({ checkedOn: '2026-11-18' })).toEqual(entry({}));
    expect(entry({ worsenedOn: '2026-11-19' })?.changedOn).toBe('2026-11-19');
    expect(entry({ clearedOn: '2026-11-20' })).toMatchObject({ id: entry({})?.id, changedOn: '2026-11-20' });
    expect(entry({ clearedOn: '2026-11-20' })?.title).toMatch(/^Cleared\. Gate locked/);
  });
});
