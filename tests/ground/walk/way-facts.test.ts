import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { MapPath } from '../../../src/domain/map.ts';
import { isStepFree, NO_WAY_YET, withLines, withPath } from '../../../src/ground/walk/way-facts.ts';

const path = (facts: Partial<MapPath>): MapPath => ({ id: 'path', line: [], ...facts });
const along = (...paths: MapPath[]) => paths.reduce((facts, each) => withPath(facts, each, []), NO_WAY_YET);

describe('a way over several paths', () => {
  test('is as steep as the steepest of them and as narrow as the narrowest, in whichever order', () => {
    const figure = fc.integer({ min: 1, max: 400 }).map((parts) => parts / 100);
    fc.assert(
      fc.property(fc.array(fc.tuple(figure, figure), { minLength: 1, maxLength: 5 }), (stated) => {
        const facts = along(...stated.map(([gradient, widthMetres]) => path({ gradient, widthMetres })));
        expect(facts.steepest).toBe(Math.max(...stated.map(([gradient]) => gradient)));
        expect(facts.narrowestMetres).toBe(Math.min(...stated.map(([, widthMetres]) => widthMetres)));
      }),
    );
    expect(along(path({ gradient: 0.12 }), path({ gradient: 0.03 }))).toMatchObject({ steepest: 0.12 });
    expect(along(path({ gradient: 0.12 }), path({}))).toMatchObject({ steepest: 0.12, narrowestMetres: null });
  });

  test('names once what any of them leaves unsaid', () => {
    expect(along(path({ steps: 0, gradient: 0.1 }), path({ steps: 0, widthMetres: 1 })).notStated).toEqual([
      'gradient',
      'width',
    ]);
    expect(along(path({}), path({})).notStated).toEqual(['steps', 'gradient', 'width']);
    expect(along(path({ stepFree: true, gradient: 0.1, widthMetres: 1 })).notStated).toEqual([]);
  });

  test('is step-free only where every one of them says so, and never where one has a step', () => {
    const [free, stepped, silent] = [path({ stepFree: true }), path({ steps: 3 }), path({})];
    expect(along(free, free).stepFree).toBe(true);
    expect(along(free, silent).stepFree).toBeNull();
    expect(along(silent, free).stepFree).toBeNull();
    expect(along(stepped, silent, free).stepFree).toBe(false);
    expect(along(silent, stepped).stepFree).toBe(false);
    // Walked twice, its steps count once.
    expect(along(stepped, free, stepped).stepped).toEqual([stepped]);
    expect(isStepFree(path({ stepFree: true, steps: 2 }))).toBe(false);
    expect(isStepFree(path({ steps: 0 }))).toBe(true);
  });

  test('keeps each overhead line it comes near, once', () => {
    const facts = withPath(withPath(NO_WAY_YET, path({}), [2, 0]), path({}), [0, 1]);
    expect(facts.lines).toEqual([2, 0, 1]);
    expect(withLines(facts, [1, 2])).toBe(facts);
  });
});
