import { describe, expect, it } from 'vitest';
import { nearLinePegs } from '../../src/atlas/near-line-pegs.ts';
import { pegSafety } from '../../src/atlas/peg-safety.ts';
import type { Peg } from '../../src/domain/peg.ts';
import type { LineStandOff } from '../../src/ground/survey.ts';
import { EXAMPLE_SETTINGS, examplePeg } from '../domain/example-venue.ts';
import { exampleAtlas } from './example-atlas.ts';

const NEAR: LineStandOff = {
  line: '11kv',
  name: 'Osier line',
  mappedMetres: 44,
  bearingDegrees: 90,
  platformMetres: 40,
  sweptMetres: 31.9,
  verdict: 'near',
};
const MEASURED = { distanceMetres: 43.7, measuredOn: '2026-11-12', method: 'tape' };

const atlasOf = (peg: Partial<Peg>, standOff: Partial<LineStandOff> = {}) =>
  exampleAtlas({ venue: { pegs: [examplePeg('1', peg)] }, peg: { standOffs: [{ ...NEAR, ...standOff }] } });
const sheetText = (peg: Partial<Peg>, standOff: Partial<LineStandOff> = {}) => {
  const atlas = atlasOf(peg, standOff);
  const entry = pegSafety(atlas, atlas.venue.pegs[0]!)[0]!;
  return `${entry.title}. ${entry.action} ${entry.facts.join(' · ')}`;
};

describe('pegs near a line', () => {
  it('ask for a tape where nobody measured them', () => {
    expect(nearLinePegs(atlasOf({}))).toMatchObject([
      {
        peg: 'The Pit 1',
        line: 'Osier line, voltage not known: treated as the highest',
        counts: '31 m',
        measured: null,
      },
    ]);
    expect(sheetText({})).toContain('Not measured yet: have it measured before it is relied on.');
  });

  it('show what was measured, by what and when', () => {
    expect(nearLinePegs(atlasOf({ measuredLineDistance: MEASURED }))[0]?.measured).toBe('43 m, tape, 12 Nov 2026');
    expect(sheetText({ measuredLineDistance: MEASURED })).not.toContain('Not measured');
  });

  it('leave out closed pegs and those well clear', () => {
    expect(nearLinePegs(atlasOf({ status: 'closed' }))).toEqual([]);
    expect(nearLinePegs(atlasOf({}, { verdict: 'clear', sweptMetres: 40 }))).toEqual([]);
  });
});

describe('the sheet of a peg near a line', () => {
  it('says voltage and height where known, and that height makes nothing safe', () => {
    const text = sheetText({}, { voltageVolts: 11_000, heightMetres: 8 });
    expect(text).toContain('Osier line, 11 kV');
    expect(text).toContain('mapped 8.0 m high, which makes no peg safe');
  });

  it('never rounds a limit up: a pole limited to 9.5 m is not 10 m', () => {
    const atlas = atlasOf({ limits: { poleMetres: 9.5, castMetres: 20 } });
    expect(pegSafety(atlas, atlas.venue.pegs[0]!)[1]?.title).toBe(
      'Limits at this peg: pole to 9.5 m, no cast beyond 20 m',
    );
  });

  it('gives the stand-off in feet too where the venue measures in feet', () => {
    const atlas = exampleAtlas({
      venue: {
        pegs: [examplePeg('1')],
        settings: { ...EXAMPLE_SETTINGS, units: { length: 'ft', weight: 'lb' } },
      },
      peg: { standOffs: [NEAR] },
    });
    const entry = pegSafety(atlas, atlas.venue.pegs[0]!)[0]!;
    expect(entry.title).toBe('Overhead line 144 ft to the east');
    expect(entry.action).toContain('stay 104 ft off, allowances taken; 30 m (99 ft) is the least.');
  });
});

describe('the way to a peg below a line', () => {
  it('has its own caution', () => {
    const atlas = exampleAtlas({
      venue: { pegs: [examplePeg('1')] },
      peg: {
        walks: [
          {
            from: 'Kiln car park',
            distanceMetres: 140,
            steps: 0,
            steepest: null,
            stepFree: true,
            narrowestMetres: null,
            notStated: [],
            underLines: ['Osier line'],
          },
        ],
      },
    });
    const [entry] = pegSafety(atlas, atlas.venue.pegs[0]!);
    expect(entry?.title).toBe('The way from every car park passes an overhead line');
    expect(entry?.action).toContain('low and level, taken down and in the bag');
    expect(entry?.facts).toEqual(['Osier line']);
  });
});
