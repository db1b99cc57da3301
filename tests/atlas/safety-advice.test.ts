import { describe, expect, it } from 'vitest';
import {
  clearingCautions,
  firstSteps,
  listedSafetyTexts,
  safetyFigures,
  staySafe,
} from '../../src/atlas/safety-advice.ts';
import { HAZARD_KINDS } from '../../src/domain/hazard-kinds.ts';
import { SAFETY_SOURCES } from '../../src/domain/safety-sources.ts';
import { SHIPPED_THRESHOLDS } from '../../src/domain/shipped-thresholds.ts';
import { EXAMPLE_SETTINGS } from '../domain/example-venue.ts';

const settings = {
  ...EXAMPLE_SETTINGS,
  thresholds: SHIPPED_THRESHOLDS,
  emergency: { number: '999', powerNumber: '105', pollutionNumber: '0800 80 70 60' },
};
const listed = listedSafetyTexts(settings);
const wordsUnder = (place: string) => listed.filter((text) => text.place === place).map(({ words }) => words);

describe('the safety texts', () => {
  it('name the venue’s own numbers and figures and leave no gap', () => {
    for (const { words } of listed) expect(words).not.toMatch(/[{}]|undefined|null/);
    expect(wordsUnder('first steps: A person or tackle has touched a power line')[1]).toContain('Call 105, and 999');
  });

  it('leave out a sentence about a number the venue does not have, and fall back on the network operator', () => {
    const bare = { ...settings, emergency: { number: '112' }, thresholds: [] };
    const words = [...firstSteps(bare), ...staySafe(bare)].flatMap(({ sentences }) => sentences);
    expect(words.join(' ')).not.toMatch(/[{}]|Report it/);
    expect(words.some((sentence) => sentence.startsWith('Call the network operator, and 112'))).toBe(true);
    expect(safetyFigures(bare)('nothing-of-the-kind')).toBeNull();
  });

  it('each name a source, or say that they are common practice without one', () => {
    for (const { source, sourceId } of listed) {
      expect(Object.keys(SAFETY_SOURCES)).toContain(sourceId);
      expect(source === 'common practice, no source').toBe(sourceId === 'practice');
      if (SAFETY_SOURCES[sourceId].basis === 'memory') expect(source).toContain('from memory');
    }
  });

  it('each say who comes before them', () => {
    for (const { defers } of [...firstSteps(settings), ...staySafe(settings)]) expect(defers).not.toBe('');
    expect(clearingCautions(settings).defers).toMatch(/local codes, site rules and licensed practice/i);
  });

  it('list what every kind of hazard advises, once', () => {
    for (const { name, advice } of HAZARD_KINDS) {
      expect(wordsUnder(`hazard: ${name}`)).toEqual(advice === '' ? [] : [advice]);
    }
  });

  it('begin a topic with the words of its kind of hazard, which stand nowhere else', () => {
    const ice = staySafe(settings).find(({ id }) => id === 'ice')!;
    expect(ice.sentences[0]).toBe(HAZARD_KINDS.find(({ id }) => id === 'thin-ice')!.advice);
  });

  it('cover what a bailiff, a first-aider and a network operator would ask for', () => {
    const ids = [...firstSteps(settings), ...staySafe(settings)].map(({ id }) => id);
    expect(ids).toEqual(
      expect.arrayContaining([
        'line-touched',
        'not-breathing',
        'alone',
        'out-and-cold',
        'algae-contact',
        'fence',
        'silt',
        'sluice',
        'flood',
        'vehicles',
      ]),
    );
    const kinds = HAZARD_KINDS.map(({ id }) => id);
    for (const kind of ['electric-fence', 'deep-silt', 'sluice-current', 'flood', 'vehicles']) {
      expect(kinds).toContain(kind);
    }
  });
});
