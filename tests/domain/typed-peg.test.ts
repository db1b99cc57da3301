import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sayAll } from '../../src/client/page-words.ts';
import { readPegOfWater, readTypedPeg } from '../../src/domain/typed-peg.ts';
import { inEnglish } from '../../src/words/say.ts';

const PEGS = [
  { water: 'Kiln Pool', peg: '1' },
  { water: 'Kiln Pool', peg: '23' },
  { water: 'Kiln Pool', peg: '14a' },
  { water: 'Tallyman Lake', peg: '23' },
  { water: 'Tallyman Lake', peg: '38' },
  { water: 'Eelback', peg: 'Dam-2' },
];
const found = (typed: string) => {
  const read = readTypedPeg(typed, PEGS);
  return read === null
    ? null
    : [read.pegs.map(({ water, peg }) => `${water} ${peg}`).join(', '), sayAll(read.faults, inEnglish)];
};

describe('what is typed for a peg', () => {
  it.each([
    ['23', 'Kiln Pool 23, Tallyman Lake 23'],
    ['023', 'Kiln Pool 23, Tallyman Lake 23'],
    ['peg 23', 'Kiln Pool 23, Tallyman Lake 23'],
    ['K23', 'Kiln Pool 23'],
    ['23 kiln', 'Kiln Pool 23'],
    ['kiln pool, 23', 'Kiln Pool 23'],
    ['tallyman/23', 'Tallyman Lake 23'],
    ['014A', 'Kiln Pool 14a'],
    ['k14a', 'Kiln Pool 14a'],
    ['dam-2', 'Eelback Dam-2'],
    ['eelback dam-2', 'Eelback Dam-2'],
    ['1', 'Kiln Pool 1'],
  ])('%s', (typed, pegs) => {
    expect(found(typed)).toEqual([pegs, '']);
  });

  it('is answered in words where there is no such peg, or not on that water', () => {
    expect(found('99')).toEqual(['', 'There is no peg 99 here.']);
    expect(found('K38')).toEqual(['Tallyman Lake 38', 'Kiln Pool has no peg 38. Elsewhere there is:']);
    expect(found('kiln 99')).toEqual(['', 'Kiln Pool has no peg 99.']);
    expect(found('x23')).toEqual(['Kiln Pool 23, Tallyman Lake 23', 'No water here begins with X.']);
  });

  it('is words to search for where it names no peg', () => {
    for (const words of ['lilies', 'kiln', '11 m pole', '23 24', 'no fires', '<b>'])
      expect(found(words), words).toBeNull();
    expect(found('  ')).toEqual(['', '']);
  });

  it('never fails, and names only pegs there are', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 60 }), (typed) => {
        for (const peg of readTypedPeg(typed, PEGS)?.pegs ?? []) expect(PEGS).toContain(peg);
      }),
    );
  });
});

describe('what is typed for a peg on a page of one water', () => {
  const read = (typed: string) => readPegOfWater(typed, 'Kiln Pool', ['1', '14a', '23']);

  it.each([
    ['23', '23'],
    [' 014A ', '14a'],
    ['K23', '23'],
    ['23 kiln', '23'],
    ['peg 1', '1'],
  ])('%s', (typed, peg) => {
    expect(read(typed)).toEqual({ peg, fault: null });
  });

  it('is answered in words where it is none of this water', () => {
    const said = (typed: string) => sayAll([read(typed).fault!], inEnglish);
    expect(said(' ')).toBe('Type the number on the post.');
    expect(said('99')).toBe('There is no peg 99 on Kiln Pool.');
    expect(said('lilies')).toBe('There is no peg lilies on Kiln Pool.');
    for (const typed of ['E23', '23 eelback', '1 23'])
      expect(said(typed), typed).toContain('This page is of Kiln Pool alone');
    expect(read('eelback 99').peg).toBeNull();
  });
});
