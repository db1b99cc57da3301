import { describe, expect, it } from 'vitest';
import { safetyPage } from '../../src/atlas/safety-page.ts';
import { thresholdRow } from '../../src/atlas/threshold-words.ts';
import type { Hazard } from '../../src/domain/hazard.ts';
import { SHIPPED_THRESHOLDS } from '../../src/domain/shipped-thresholds.ts';
import type { LineStandOff } from '../../src/ground/survey.ts';
import { EXAMPLE_SETTINGS, examplePeg, exampleVenue } from '../domain/example-venue.ts';
import { exampleAtlas } from './example-atlas.ts';

const hazard = (kind: string, changes: Partial<Hazard> = {}): Hazard => ({
  kind,
  place: 'the whole bank',
  severity: 3,
  likelihood: 2,
  foundOn: '2025-03-09',
  checkedOn: '2026-11-01',
  ...changes,
});

const [water] = exampleVenue().waters;
const withMap = (changes: object) => [{ ...water!, map: { ...water!.map, ...changes } }];

describe('every hazard in force', () => {
  const page = safetyPage(
    exampleAtlas({
      venue: {
        pegs: [
          examplePeg('1', { hazards: [hazard('steep-bank'), hazard('slippery', { clearedOn: '2026-10-01' })] }),
          examplePeg('2', { hazards: [hazard('steep-bank'), hazard('overhead-line', { severity: 1, likelihood: 1 })] }),
          examplePeg('3', { hazards: [hazard('steep-bank', { action: 'Use the rope.' })] }),
        ],
      },
    }),
  );

  it('stands under its kind with its sign, hard rules first whatever their score', () => {
    expect(page.hazards.map(({ name, sign, entries }) => [name, sign, entries])).toEqual([
      ['Overhead power line', 'W012', 1],
      ['Steep bank', 'W008', 3],
    ]);
    expect(page.hazardCount).toBe(4);
  });

  it('is told once for pegs where it reads the same, apart where it does not', () => {
    const steep = page.hazards[1]!.rows;
    expect(steep.map(({ pegs, action }) => [pegs.map(({ peg }) => peg), action])).toEqual([
      [['1', '2'], null],
      [['3'], 'Use the rope.'],
    ]);
  });

  it('leaves out what was cleared', () => {
    expect(page.hazards.some(({ id }) => id === 'slippery')).toBe(false);
  });
});

describe('overhead lines', () => {
  const standOff = (sweptMetres: number): LineStandOff => ({
    line: 'north',
    name: 'North line',
    mappedMetres: sweptMetres + 20.9,
    bearingDegrees: 90,
    platformMetres: sweptMetres + 16,
    sweptMetres,
    verdict: 'clear',
  });
  const overheadLines = [{ id: 'north', name: 'North line', line: [] }];
  const pageWith = (sweptMetres: number, peg = examplePeg('1')) =>
    safetyPage(
      exampleAtlas({
        venue: { waters: withMap({ overheadLines }), pegs: [peg] },
        peg: { standOffs: [standOff(sweptMetres)] },
      }),
    );

  it('list the pegs near them with what counts, rounded down and never up', () => {
    const [line] = pageWith(31.9).lines;
    expect(line?.voltage).toBe('voltage not known: treated as the highest');
    expect(line?.rows).toMatchObject([
      { peg: 'The Pit 1', mapped: '52 m', counts: '31 m', standing: { closed: null }, isLimited: false, limits: '' },
    ]);
  });

  it('show a limit that keeps a peg open, and a closed peg as closed', () => {
    expect(pageWith(31, examplePeg('1', { limits: { poleMetres: 11 } })).lines[0]?.rows[0]).toMatchObject({
      isLimited: true,
      limits: 'pole to 11 m',
    });
    const closed = pageWith(
      5,
      examplePeg('1', { status: 'closed', statusReason: 'Under the line', statusSince: '2025-02-03' }),
    );
    expect(closed.lines[0]?.rows[0]?.standing.closed).not.toBeNull();
    expect(closed.closed).toMatchObject([
      {
        water: 'The Pit',
        pegs: [{ peg: '1', href: '/pit/1/' }],
        standing: { closed: { because: 'since 3 Feb 2025: Under the line' } },
      },
    ]);
  });

  it('need no row for pegs far off', () => {
    expect(pageWith(80).lines[0]?.rows).toEqual([]);
  });
});

describe('the figures the rules rest on', () => {
  it('show value, source, edition and how far to trust them', () => {
    const row = thresholdRow({
      id: 'gust-under-trees',
      value: 20.1,
      unit: 'm/s',
      source: 'an estate',
      edition: '2016',
      checkedOn: '2026-01-04',
      basis: 'seen',
    });
    expect(row).toEqual({
      id: 'gust-under-trees',
      name: 'Leave pegs under trees at gusts of',
      value: '45 mph (20 m/s)',
      source: 'an estate',
      edition: 'edition 2016, checked 4 Jan 2026',
      basis: 'read on the page named',
      isFromMemory: false,
    });
  });

  it('never print a figure from memory as a fact', () => {
    const row = thresholdRow({ id: 'rail', value: 5, unit: 'm', source: 'somewhere', basis: 'memory' });
    expect(row).toMatchObject({ isFromMemory: true, basis: 'from memory: check before use' });
    expect(row.edition).toBe('edition not stated, no date of check on record');
  });

  it('write slopes and temperatures as people do', () => {
    const value = (id: string) => thresholdRow(SHIPPED_THRESHOLDS.find((each) => each.id === id)!).value;
    expect(value('cold-water')).toBe('15 °C');
    expect(value('accessible-path-gradient')).toBe('1 in 10');
    expect(value('sloping-bank')).toBe('14°');
  });

  it('stand in sentences by their id, and nothing stands where the venue has none', () => {
    const atlas = exampleAtlas({ venue: { settings: { ...EXAMPLE_SETTINGS, thresholds: SHIPPED_THRESHOLDS } } });
    const thunder = (page: ReturnType<typeof safetyPage>) =>
      page.staySafe.find(({ id }) => id === 'lightning')!.sentences;
    expect(thunder(safetyPage(atlas))[1]).toBe('Wait 30 minutes after the last thunder; each clap starts it again.');
    expect(thunder(safetyPage(exampleAtlas()))).toHaveLength(1);
  });
});

describe('the rest of the safety page', () => {
  it('lists rescue kit with the day it is due, unknown where it was never checked', () => {
    const at = { lat: 52.75, lng: -0.05 };
    const places = [
      { id: 'a', kind: 'aed', name: 'Lodge wall', at, checkedOn: '2026-11-14' },
      { id: 't', kind: 'throw-line', name: 'Line 1', at },
      { id: 'u', kind: 'throw-line', name: 'Line 2', at },
      { id: 'g', kind: 'gate', name: 'Gate', at },
    ];
    const page = safetyPage(exampleAtlas({ venue: { waters: withMap({ places }) } }));
    expect(page.rescue.map(({ sign, names, check }) => [sign, names, check.dueOn])).toEqual([
      ['E010', 'Lodge wall', '2026-12-12'],
      ['E041', 'Line 1, Line 2', null],
    ]);
  });

  it('says of kit that a round found missing that it is not to be counted on, and when that was', () => {
    const places = ['t', 'u'].map((id) => ({
      id,
      kind: 'throw-line' as const,
      name: `Line ${id}`,
      at: { lat: 52.75, lng: -0.05 },
      checkedOn: '2026-10-01' as const,
    }));
    const round = {
      ref: 'k7q2',
      day: '2026-11-14' as const,
      file: '',
      entries: [{ entry: 'kit-checked' as const, water: 'pit', mappedAs: 't', kit: 'missing' as const }],
    };
    const page = safetyPage(exampleAtlas({ venue: { waters: withMap({ places }), rounds: [round] } }));
    expect(page.rescue.map(({ names, trouble, check }) => [names, trouble, check.checkedOn])).toEqual([
      ['Line t', 'missing when last looked at', '2026-11-14'],
      ['Line u', null, '2026-10-01'],
    ]);
  });

  it('names the months in which nobody cuts', () => {
    const months = (page: ReturnType<typeof safetyPage>) =>
      page.clearing.cautions.find(({ about }) => about === 'Months')?.words;
    expect(months(safetyPage(exampleAtlas()))).toBe('This club keeps off altogether from March to August.');
    const settings = { ...EXAMPLE_SETTINGS, nestingMonths: [3, 5] as const };
    expect(months(safetyPage(exampleAtlas({ venue: { settings } })))).toBe(
      'This club keeps off altogether from March, May.',
    );
    const none = { ...EXAMPLE_SETTINGS, nestingMonths: [] };
    expect(months(safetyPage(exampleAtlas({ venue: { settings: none } })))).toBeUndefined();
  });
});
