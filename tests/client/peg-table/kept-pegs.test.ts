import { describe, expect, it } from 'vitest';
import { sayAll } from '../../../src/client/page-words.ts';
import { addressWithPegs, keepPegs, keptPegs, withPeg } from '../../../src/client/peg-table/kept-pegs.ts';
import { inEnglish } from '../../../src/words/say.ts';

const PLACE = { base: '/guide/', water: 'kiln-pool' };
const ALL = ['1', '2', '3', '14a', '23', '24'];

function phone(): Pick<Storage, 'getItem' | 'setItem' | 'removeItem'> {
  const kept = new Map<string, string>();
  return {
    getItem: (name) => kept.get(name) ?? null,
    setItem: (name, value) => void kept.set(name, value),
    removeItem: (name) => void kept.delete(name),
  };
}

describe('the pegs kept to be compared', () => {
  it('are those of the address, else those of this phone', () => {
    const store = phone();
    expect(keepPegs(store, PLACE, ['2', '23'])).toBe(true);
    expect(keptPegs('', store, PLACE, ALL)).toEqual({ pegs: ['2', '23'], said: [] });
    expect(keptPegs('?pegs=014A,1', store, PLACE, ALL)).toEqual({ pegs: ['14a', '1'], said: [] });
    expect(keptPegs('', store, { ...PLACE, water: 'eelback' }, ALL).pegs).toEqual([]);
  });

  it('are four at most and of this water; what is left out is said', () => {
    const opened = keptPegs('?pegs=1,2,3,23,24,99', null, PLACE, ALL);
    expect(opened.pegs).toEqual(['1', '2', '3', '23']);
    expect(sayAll(opened.said, inEnglish)).toBe('There is no peg 99 here. 4 pegs at most: 24 left out.');
    const full = withPeg(['1', '2', '3', '23'], '24', true);
    expect(full.pegs).toEqual(['1', '2', '3', '23']);
    expect(sayAll(full.said, inEnglish)).toBe('4 pegs at most side by side: take one of 1, 2, 3, 23 out first.');
    expect(withPeg(['1', '2'], '2', false)).toEqual({ pegs: ['1'], said: [] });
  });

  it('are not kept where the phone refuses, and that is told to the caller', () => {
    const full = {
      ...phone(),
      setItem: () => {
        throw new DOMException('full', 'QuotaExceededError');
      },
    };
    expect(keepPegs(full, PLACE, ['1'])).toBe(false);
    expect(keepPegs(null, PLACE, ['1'])).toBe(false);
  });

  it('go into the address beside what is there', () => {
    expect(addressWithPegs('https://club.example/compare/kiln-pool/?month=8&pegs=9', ['1', '14a'])).toBe(
      'https://club.example/compare/kiln-pool/?month=8&pegs=1,14a',
    );
    expect(addressWithPegs('https://club.example/compare/kiln-pool/?pegs=9', [])).toBe(
      'https://club.example/compare/kiln-pool/',
    );
  });
});
