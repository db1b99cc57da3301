import { describe, expect, test } from 'vitest';
import { firstLook } from '../../src/ratings/first-look.ts';
import { simulateFromModel } from '../demo/simulate-from-model.ts';

const SMALL = { waters: 1, pegs: 30, anglers: 60, events: 60, features: 3 } as const;

function look(options: Parameters<typeof simulateFromModel>[0]) {
  return firstLook(simulateFromModel({ ...SMALL, seed: 5, ...options }).venue);
}

describe('who does not weigh, learned from simulated logs', () => {
  test('the very lowest: a sharp line, and a scatter no longer cut short', () => {
    const { lesson, without, start } = look({ dnwShare: 0.2, dnwBy: 'lowest' });
    expect(lesson.mechanism!.blur).toBeLessThan(0.45);
    expect(lesson.mechanism!.shift).toBeLessThan(-0.5);
    // Drawn with 0.6: without its lowest fifth the log looks much less scattered than it was.
    expect(without!.fit.residualSd).toBeLessThan(0.54);
    expect(start!.residualSd).toBeGreaterThan(0.55);
  });

  test('anybody: no line at all', () => {
    const { lesson } = look({ dnwShare: 0.2, dnwBy: 'anybody' });
    expect(lesson.mechanism!.blur).toBeGreaterThan(2);
  });

  test('twelve of twenty below a line: learned all the same', () => {
    const { lesson, start } = look({ dnwShare: 0.6, dnwBy: 'line', field: 20 });
    expect(lesson.mechanism).not.toBeNull();
    expect(Math.abs(start!.residualSd - 0.6)).toBeLessThan(0.06);
  });

  test('too few to learn from: nothing is learned, and why', () => {
    expect(look({ dnwShare: 0.004 }).lesson).toMatchObject({
      mechanism: null,
      why: 'few-dnw',
    });
  });

  test('nobody: nothing to learn', () => {
    expect(look({}).lesson).toEqual({ mechanism: null, why: 'all-weighed' });
  });
});

describe('whether the log asks for pegs that change', () => {
  test('not where they stay as they are', () => {
    expect(look({}).asked.pegYears).toBe(false);
  });

  test('where they lie a fifth apart from year to year', () => {
    const { asked, scores } = look({ pegYear: 0.25 });
    expect(asked.pegYears).toBe(true);
    expect(scores!.pegYears).toBeGreaterThan(3);
  });
});
