import { describe, expect, test } from 'vitest';
import type { Peg } from '../../src/domain/peg.ts';
import { accessFindings } from '../../src/ground/access-findings.ts';
import type { Walk } from '../../src/ground/survey.ts';
import { EXAMPLE_SETTINGS, examplePeg } from '../domain/example-venue.ts';

const WALK: Walk = {
  from: 'Main car park',
  distanceMetres: 80,
  steps: 0,
  steepest: 0.05,
  narrowestMetres: 1.2,
  stepFree: true,
  notStated: [],
  underLines: [],
};
const GOOD: Partial<Peg> = {
  access: { accessible: true, stepFree: true },
  platform: { kind: 'timber', widthMetres: 1.8, lengthMetres: 2.4, railHeightMetres: 0.8, edgeProtection: true },
};

function findings(changes: Partial<Peg>, walk: Walk | null = WALK, walks: readonly Walk[] = [WALK]) {
  return accessFindings(examplePeg('1', { ...GOOD, ...changes }), walks, walk, EXAMPLE_SETTINGS).map(
    ({ what, found, needed }) => `${what}: ${found}, needed ${needed}`,
  );
}

describe('a claim to be accessible', () => {
  test('stands where every figure is recorded and passes', () => {
    expect(findings({})).toEqual([]);
  });

  test('is not tested where it is not made', () => {
    expect(findings({ access: {}, platform: { kind: 'none' } }, null, [])).toEqual([]);
  });

  test('fails on the worst gradient and the narrowest path of the way', () => {
    expect(findings({}, { ...WALK, steepest: 1 / 6, narrowestMetres: 0.8 })).toEqual([
      'Steepest path on the way: 1 in 6, needed at most 1 in 10',
      'Narrowest path on the way: 0.8 m, needed at least 0.915 m',
    ]);
  });

  test('fails on what some path of the way does not record', () => {
    expect(findings({}, { ...WALK, notStated: ['gradient', 'width'] })).toEqual([
      'Steepest path on the way: not recorded, needed at most 1 in 10',
      'Narrowest path on the way: not recorded, needed at least 0.915 m',
    ]);
  });

  test('fails on a platform too small to turn on, a rail too high to fish over and an open edge', () => {
    const platform = {
      kind: 'timber',
      widthMetres: 1.2,
      lengthMetres: 2.4,
      railHeightMetres: 1.1,
      edgeProtection: false,
    };
    expect(findings({ platform })).toEqual([
      'Space to turn on the platform: 1.2 m, needed at least 1.525 m',
      'Rail height: 1.1 m, needed at most 0.865 m',
      'Edge of the platform: none, needed a kerb, or deck beyond the rail',
    ]);
  });

  test('fails on a platform that is not recorded', () => {
    expect(findings({ platform: { kind: 'timber' } })).toEqual([
      'Space to turn on the platform: not recorded, needed at least 1.525 m',
      'Edge of the platform: not recorded, needed a kerb, or deck beyond the rail',
    ]);
  });

  test('takes the venue’s own figure in place of the shipped one, and tells its source', () => {
    const own = {
      id: 'accessible-path-width',
      value: 1.5,
      unit: 'm',
      source: 'The club’s own rule',
      basis: 'club' as const,
    };
    const [found] = accessFindings(examplePeg('1', GOOD), [WALK], WALK, { thresholds: [own] });
    expect(found).toEqual({
      what: 'Narrowest path on the way',
      found: '1.2 m',
      needed: 'at least 1.5 m',
      source: 'The club’s own rule',
    });
  });
});

describe('a claim to be step-free', () => {
  const stepFree: Partial<Peg> = { access: { stepFree: true } };

  test('is held against the paths alone', () => {
    expect(findings({ ...stepFree, platform: { kind: 'timber' } })).toEqual([]);
  });

  test('fails on steps of every way, of its own bank, and on steps that are not recorded', () => {
    const stepped = { ...WALK, steps: 9, stepFree: false };
    expect(findings(stepFree, null, [stepped])).toEqual([
      'Way from a car park: 9 steps from Main car park, needed a way without steps',
    ]);
    expect(findings({ ...stepFree, bank: { steps: 1 } })).toEqual([
      'Way from a car park: 1 step on its own bank, needed a way without steps',
    ]);
    expect(findings(stepFree, { ...WALK, stepFree: null, notStated: ['steps'] })).toEqual([
      'Way from a car park: steps not recorded on every path of the way, needed a way without steps',
    ]);
  });

  test('fails where no drawn path joins the peg to a car park', () => {
    expect(findings(stepFree, null, [])).toEqual([
      'Way from a car park: no drawn path joins it to a car park, needed a way without steps',
    ]);
  });
});
