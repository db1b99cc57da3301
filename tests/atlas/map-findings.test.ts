import { describe, expect, it } from 'vitest';
import { mapSvg } from '../../src/atlas/drawing/map-svg.ts';
import { mapFindings } from '../../src/atlas/map-findings.ts';
import { venueGeojson, waterGeojson } from '../../src/atlas/venue-geojson.ts';
import { waterMap } from '../../src/atlas/water-map.ts';
import type { PlaceHazard } from '../../src/domain/hazard.ts';
import type { Water } from '../../src/domain/map.ts';
import type { BankRound } from '../../src/domain/round.ts';
import { exampleVenue } from '../domain/example-venue.ts';
import { exampleAtlas } from './example-atlas.ts';

const [PIT] = exampleVenue().waters;
const at = (lat: number, lng: number) => ({ lat, lng });
const found = (kind: string, mappedAs: string | undefined, change: Partial<PlaceHazard> = {}): PlaceHazard => ({
  kind,
  place: 'seen there',
  severity: 3,
  likelihood: 3,
  foundOn: '2026-11-12',
  ...(mappedAs === undefined ? {} : { mappedAs }),
  ...change,
});
const WATER: Water = {
  ...PIT!,
  hazards: [
    found('locked-gate', 'g1'),
    found('blocked-way', 'g1', { place: 'a bough' }),
    found('fallen-tree', 'p1'),
    found('rats', 'p1', { clearedOn: '2026-11-20' }),
    found('algae-scum', undefined),
    found('trip', 'no-longer-there'),
  ],
  map: {
    ...PIT!.map,
    places: [
      { id: 'g1', kind: 'gate', name: 'Lane gate', at: at(52.7498, -0.0505) },
      { id: 't1', kind: 'throw-line', name: 'Dam', at: at(52.7501, -0.0509), checkedOn: '2026-10-01' },
    ],
    // A corner a quarter of the way along: the middle is not a corner, nor half-way between the ends.
    paths: [{ id: 'p1', name: 'North path', line: [at(52.7502, -0.0508), at(52.7503, -0.0508), at(52.7506, -0.0508)] }],
  },
};
const ROUND: BankRound = {
  ref: 'k7q2',
  day: '2026-11-14',
  file: '',
  entries: [{ entry: 'kit-checked', water: 'pit', mappedAs: 't1', kit: 'missing' }],
};

describe('what is found at no peg, on the map', () => {
  const findings = mapFindings({ rounds: [ROUND] }, WATER);

  it('is one mark a place or path, with all that is found there and nothing that is cleared', () => {
    expect(findings.map(({ words }) => words)).toEqual([
      'Lane gate: Gate locked, seen there; Way blocked, a bough',
      'Throw line, Dam: missing when last looked at',
      'North path: Fallen tree, seen there',
    ]);
    expect(findings[2]?.at.lat).toBeCloseTo(52.7504, 6);
  });

  it('stands on the drawn map, with words for who cannot see it, and in the data of the live one', () => {
    const other = { ...PIT!, id: 'lake', hazards: [], map: { ...PIT!.map, places: [], paths: [] } };
    const atlas = exampleAtlas({ venue: { waters: [WATER, other], rounds: [ROUND] } });
    const svg = mapSvg(waterMap(atlas, 'pit'));
    for (const { words } of findings) expect(svg).toContain(`aria-label="${words}"`);
    // The other water's own map shows the same ground, and so the same findings.
    for (const { features } of [venueGeojson(atlas), waterGeojson(atlas, 'pit'), waterGeojson(atlas, 'lake')]) {
      const names = features.flatMap(({ properties }) => (properties?.kind === 'finding' ? [properties.name] : []));
      expect(names).toEqual(findings.map(({ words }) => words));
    }
    expect(mapSvg(waterMap(atlas, 'lake'))).toContain('North path: Fallen tree');
  });
});
