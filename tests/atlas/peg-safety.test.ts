import { describe, expect, it } from 'vitest';
import { limitWords, pegSafety } from '../../src/atlas/peg-safety.ts';
import type { Hazard } from '../../src/domain/hazard.ts';
import type { LineStandOff } from '../../src/ground/survey.ts';
import { EXAMPLE_SETTINGS, examplePeg } from '../domain/example-venue.ts';
import { exampleAtlas } from './example-atlas.ts';

const STEEP: Hazard = {
  kind: 'steep-bank',
  place: 'the whole bank',
  action: 'Use the six steps.',
  severity: 3,
  likelihood: 3,
  foundOn: '2025-03-09',
  checkedOn: '2026-09-25',
};
const SCUM: Hazard = { kind: 'algae-scum', place: 'the bay', severity: 1, likelihood: 1, foundOn: '2026-11-20' };
const LINE: LineStandOff = {
  line: 'line',
  name: 'Low line',
  voltageVolts: 11_000,
  mappedMetres: 41.6,
  bearingDegrees: 268,
  platformMetres: 37.6,
  sweptMetres: 31.2,
  verdict: 'near',
};

function safetyOf(hazards: readonly Hazard[], standOffs: readonly LineStandOff[] = []) {
  const peg = examplePeg('1', { hazards });
  return pegSafety(exampleAtlas({ venue: { pegs: [peg] }, peg: { standOffs } }), peg);
}

describe('pegSafety', () => {
  it('says nothing where nothing is on record', () => {
    expect(safetyOf([])).toEqual([]);
  });

  it('tells a hazard with its sign, place, action and dates', () => {
    expect(safetyOf([STEEP])).toEqual([
      {
        sign: 'W008',
        title: 'Steep bank: the whole bank',
        action: 'Use the six steps.',
        control: null,
        facts: ['found 9 Mar 2025'],
        check: { checkedOn: '2026-09-25', dueOn: '2026-10-23', intervalDays: 28 },
      },
    ]);
  });

  it('puts a hard rule before a higher score', () => {
    expect(safetyOf([STEEP, SCUM]).map(({ title }) => title)).toEqual([
      'Blue-green algae scum: the bay',
      'Steep bank: the whole bank',
    ]);
  });

  it('leaves cleared hazards out', () => {
    expect(safetyOf([{ ...STEEP, clearedOn: '2026-10-01' }])).toEqual([]);
  });

  it('never rounds a distance to a line up', () => {
    const [entry] = safetyOf([], [LINE]);
    expect(entry?.title).toBe('Overhead line 41 m to the west');
    expect(entry?.action).toContain('stay 31 m off, allowances taken; 30 m is the least.');
    expect(entry?.facts).toEqual(['Low line, 11 kV']);
    expect(entry?.check).toBeNull();
  });

  it('says at once what makes a line too near whose distance alone would not', () => {
    const title = (line: Partial<LineStandOff>) => safetyOf([], [{ ...LINE, verdict: 'inside', ...line }])[0]?.title;
    expect(title({ sweptMetres: 20 })).toBe('Overhead line 41 m to the west: pole or cast from here comes inside 30 m');
    expect(title({ mappedMetres: 31.6, platformMetres: 27.6, sweptMetres: 0 })).toBe(
      'Overhead line 31 m to the west, inside the 30 m to keep',
    );
  });

  it('says of an unknown voltage that it is not known', () => {
    const { voltageVolts: _, ...unknown } = LINE;
    expect(safetyOf([], [unknown])[0]?.facts[0]).toContain('Low line, voltage not known');
  });

  it('tells the record of a line and its distance as one thing', () => {
    const record: Hazard = { ...STEEP, kind: 'overhead-line', line: LINE.name, action: 'Keep off the bank behind.' };
    const entries = safetyOf([record], [LINE]);
    expect(entries).toHaveLength(1);
    expect(entries[0]?.action).toContain('Keep off the bank behind.');
    expect(entries[0]?.check?.dueOn).toBe('2026-10-23');
  });

  it('leaves out a line out of sight, but never one inside the stand-off', () => {
    expect(
      safetyOf([], [{ ...LINE, mappedMetres: 300, platformMetres: 296, sweptMetres: 256, verdict: 'clear' }]),
    ).toEqual([]);
    expect(safetyOf([], [{ ...LINE, sweptMetres: 12, verdict: 'inside' }])[0]?.action).toContain('do not fish here');
  });

  it('tells all the ways below a line in one entry, where none is clear', () => {
    const walk = {
      distanceMetres: 100,
      steps: 0,
      steepest: null,
      stepFree: true,
      narrowestMetres: null,
      notStated: [],
    };
    const peg = examplePeg('1');
    const walks = [
      { ...walk, from: 'Lodge', underLines: ['Low line'] },
      { ...walk, from: 'Track', underLines: ['Low line'] },
    ];
    const clear = [...walks, { ...walk, from: 'Gate', underLines: [] }];
    expect(pegSafety(exampleAtlas({ venue: { pegs: [peg] }, peg: { walks: clear } }), peg)).toEqual([]);
    const entries = pegSafety(exampleAtlas({ venue: { pegs: [peg] }, peg: { walks } }), peg);
    expect(entries).toHaveLength(1);
    expect(entries[0]?.title).toBe('The way from every car park passes an overhead line');
    expect(entries[0]?.facts).toEqual(['Low line']);
  });
});

describe('limitWords', () => {
  it('names only what the record allows less of than the venue', () => {
    expect(limitWords({ limits: {} }, EXAMPLE_SETTINGS)).toEqual([]);
    expect(limitWords({ limits: { poleMetres: 11, castMetres: 20, sectorDegrees: 60 } }, EXAMPLE_SETTINGS)).toEqual([
      'pole to 11 m',
      'no cast beyond 20 m',
      '30° either side of straight ahead',
    ]);
    expect(limitWords({ limits: { castMetres: 0 } }, EXAMPLE_SETTINGS)).toEqual(['no casting']);
  });

  it('takes a limit above the permission for none', () => {
    expect(limitWords({ limits: { poleMetres: 18 } }, EXAMPLE_SETTINGS)).toEqual([]);
  });
});
